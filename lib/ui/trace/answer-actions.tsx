'use client';

import { Button, Group } from '@mantine/core';
import { IconFileTypeCsv, IconPrinter } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';

/** Takes an answer along: all of it as a file, what it is narrowed to as another one, or what is shown on paper. */
export function AnswerActions({ query, narrowed }: { query: string; narrowed: string | null }) {
  const t = useTranslations('trace');
  return (
    <Group className="rk-no-print" gap="xs">
      <CsvButton query={query} label={t('csv')} />
      {narrowed !== null && <CsvButton query={narrowed} label={t('csvNarrowed')} />}
      <Button variant="default" leftSection={<IconPrinter aria-hidden />} onClick={() => window.print()}>
        {t('print')}
      </Button>
    </Group>
  );
}

function CsvButton({ query, label }: { query: string; label: string }) {
  return (
    <Button
      component="a"
      href={`/api/trace/where-used.csv?${query}`}
      download
      variant="default"
      leftSection={<IconFileTypeCsv aria-hidden />}
    >
      {label}
    </Button>
  );
}
