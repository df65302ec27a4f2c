'use client';

import { Anchor } from '@mantine/core';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import { Screen } from '@/lib/ui/shell/screen';

/** What stands at an address that leads nowhere. */
export function NotFoundPage() {
  const t = useTranslations('wrong.notFound');
  return (
    <Screen title={t('title')}>
      <p>{t('text')}</p>
      <p>
        <Anchor component={Link} href="/floor">
          {t('start')}
        </Anchor>
        {' · '}
        <Anchor component={Link} href="/trace">
          {t('trace')}
        </Anchor>
      </p>
    </Screen>
  );
}
