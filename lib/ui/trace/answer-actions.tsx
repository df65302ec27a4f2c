'use client';

import { Button, Group } from '@mantine/core';
import { IconFileTypeCsv, IconFilterPlus, IconPrinter } from '@tabler/icons-react';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { useTranslations } from 'use-intl';

/**
 * Goes on with an answer: its units on hold, narrower, or taken along as a file with all of it or with what it is filtered to, or what is
 * shown on paper.
 */
export function AnswerActions({
  query,
  filtered,
  narrower,
  hold,
}: {
  query: string;
  filtered: string | null;
  narrower: string | null;
  /** The button that holds the units; null for whoever may not. */
  hold: ReactNode;
}) {
  const t = useTranslations('trace');
  const tNarrow = useTranslations('narrow');
  return (
    <Group className="rk-no-print" gap="xs">
      {hold}
      {narrower !== null && (
        <Button
          component={Link}
          href={narrower}
          prefetch={false}
          variant="default"
          leftSection={<IconFilterPlus aria-hidden />}
        >
          {tNarrow('open')}
        </Button>
      )}
      <CsvButton query={query} label={t('csv')} />
      {filtered !== null && <CsvButton query={filtered} label={t('csvNarrowed')} />}
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
