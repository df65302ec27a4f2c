'use client';

import { useTranslations } from 'use-intl';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskButton } from '@/lib/ui/desk/desk-button';
import { Moment } from '@/lib/ui/moment';
import table from '@/lib/ui/table.module.css';
import { HoldTag } from '@/lib/ui/tags/hold-tag';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** A hold with what became of it. */
export type HoldRow = {
  hold: string;
  kind: string;
  id: string;
  reason: string;
  automatic: boolean;
  at: string;
  releasedAt: string | null;
  disposition: string | null;
};

/** The holds on one thing, open and released; open ones with their release for those who may. */
export function HoldsTable({ holds, release }: { holds: readonly HoldRow[]; release: DeskAction | null }) {
  const t = useTranslations('unit');
  const reasonOf = useHoldReason();
  const columns = ['state', 'reason', 'placed', 'released', 'disposition'] as const;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(`holds.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {holds.map(({ hold, id, reason: said, automatic, at, releasedAt, disposition }) => {
          const reason = reasonOf(said);
          return (
            <tr key={hold}>
              <td>
                <HoldTag isOpen={releasedAt === null} />
              </td>
              <th scope="row">
                {reason} {automatic && `(${t('holds.gate')})`}
              </th>
              <td data-label={t('holds.placed')}>
                <Moment at={at} />
              </td>
              <td>
                {releasedAt !== null && <Moment at={releasedAt} />}
                {releasedAt === null && release !== null && (
                  <DeskButton
                    label={t('actions.release.label')}
                    accessibleLabel={t('actions.release.labelOf', { reason })}
                    title={t('actions.release.title', { target: id })}
                    text={t('actions.release.text', { reason })}
                    confirm={t('actions.release.confirm')}
                    asks={['disposition']}
                    hidden={{ hold }}
                    action={release}
                  />
                )}
              </td>
              <td data-label={t('holds.disposition')}>{disposition}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
