'use client';

import { useTranslations } from 'use-intl';
import type { ExceptionEntry, ExceptionList } from '@/lib/domain/exceptions/exception-list';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { ExceptionRow } from '@/lib/ui/exceptions/exception-row';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';
import table from '@/lib/ui/table.module.css';

/** What happened against a rule and waits for QA, and what was cleared last. */
export function ExceptionsPage({
  list: { total, open, cleared },
  clear,
  reopen,
}: {
  list: ExceptionList;
  clear: DeskAction | null;
  reopen: DeskAction | null;
}) {
  const t = useTranslations('exceptions');
  return (
    <Screen title={t('title')}>
      <Section title={t('summary', { total })}>
        <p>{t('hint')}</p>
        {total > open.length && <p>{t('shown', { count: open.length })}</p>}
        <Exceptions of="open" entries={open} action={clear} />
      </Section>
      {cleared.length > 0 && (
        <Section title={t('cleared')}>
          <Exceptions of="cleared" entries={cleared} action={reopen} />
        </Section>
      )}
    </Screen>
  );
}

function Exceptions({
  of,
  entries,
  action,
}: {
  of: 'open' | 'cleared';
  entries: readonly ExceptionEntry[];
  action: DeskAction | null;
}) {
  const t = useTranslations('exceptions');
  if (entries.length === 0) return null;
  const columns = [
    'what',
    'broken',
    'where',
    'when',
    ...(of === 'open' ? [] : ['cleared' as const]),
    'actions',
  ] as const;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(`columns.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <ExceptionRow key={entry.event} entry={entry} action={action} />
        ))}
      </tbody>
    </table>
  );
}
