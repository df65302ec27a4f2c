'use client';

import { Anchor, Button, Group } from '@mantine/core';
import { IconAlertOctagonFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { Screen } from '@/lib/ui/shell/screen';
import { Trouble } from '@/lib/ui/trouble';

/** What stands where a page failed; `digest` is under what the server's log has the failure. */
export function FailedPage({ digest, retry }: { digest: string | undefined; retry: () => void }) {
  const t = useTranslations('wrong.failed');
  return (
    <Screen title={t('title')}>
      <Trouble meaning="stop" shape={IconAlertOctagonFilled} title={t('title')}>
        {digest === undefined ? (
          t('noDigest')
        ) : (
          <>
            {t('text')} <code>{digest}</code>
          </>
        )}
      </Trouble>
      <Group>
        <Button onClick={retry}>{t('again')}</Button>
        <Anchor href="/floor">{t('start')}</Anchor>
      </Group>
    </Screen>
  );
}
