'use client';

import { ActionIcon, useComputedColorScheme, useMantineColorScheme } from '@mantine/core';
import { IconSunMoon } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';

/** Turns light into dark and back; until it is pressed the device decides. */
export function SchemeSwitch() {
  const t = useTranslations('shell.scheme');
  const { setColorScheme } = useMantineColorScheme();
  const scheme = useComputedColorScheme('light');
  return (
    <ActionIcon
      variant="subtle"
      color="gray"
      c="inherit"
      size={48}
      aria-label={t('label')}
      title={t('label')}
      onClick={() => setColorScheme(scheme === 'light' ? 'dark' : 'light')}
    >
      <IconSunMoon aria-hidden />
    </ActionIcon>
  );
}
