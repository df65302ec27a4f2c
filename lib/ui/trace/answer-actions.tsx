'use client';

import { Button, Group } from '@mantine/core';
import { IconFileTypeCsv, IconPrinter } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';

/** Takes an answer along: all of it as a file, or what is shown on paper. */
export function AnswerActions({ query }: { query: string }) {
  const t = useTranslations('trace');
  return (
    <Group className="rk-no-print" gap="xs">
      <Button
        component="a"
        href={`/api/trace/where-used.csv?${query}`}
        download
        variant="default"
        leftSection={<IconFileTypeCsv aria-hidden />}
      >
        {t('csv')}
      </Button>
      <Button variant="default" leftSection={<IconPrinter aria-hidden />} onClick={() => window.print()}>
        {t('print')}
      </Button>
    </Group>
  );
}
