'use client';

import { useTranslations } from 'use-intl';
import type { Certainty } from '@/lib/domain/genealogy/answer';
import type { NarrowedUnit } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import { CodeText } from '@/lib/ui/code-text';
import { fetchNarrowed } from '@/lib/ui/narrow/fetch-narrowed';
import { PlaceText } from '@/lib/ui/place-text';
import table from '@/lib/ui/table.module.css';
import { HoldTag } from '@/lib/ui/tags/hold-tag';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { PagedUnits } from '@/lib/ui/trace/paged-units';

/** The units of one group, page by page. */
export function NarrowedUnits({
  conditions,
  certainty,
  ...page
}: {
  first: readonly NarrowedUnit[];
  next: string | null;
  count: number;
  conditions: readonly Condition[];
  certainty: Certainty;
}) {
  return (
    <PagedUnits {...page} readPage={(asked) => fetchNarrowed({ conditions, certainty, ...asked })}>
      {(units) => <Rows units={units} hasDoubts={certainty === 'possible'} />}
    </PagedUnits>
  );
}

function Rows({ units, hasDoubts }: { units: readonly NarrowedUnit[]; hasDoubts: boolean }) {
  const t = useTranslations('trace.units');
  const tOwn = useTranslations('narrow.units');
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('unit')}</th>
          <th scope="col">{t('product')}</th>
          <th scope="col">{t('place')}</th>
          <th scope="col">{t('where')}</th>
          <th scope="col">{tOwn('held')}</th>
          {hasDoubts && <th scope="col">{tOwn('because')}</th>}
        </tr>
      </thead>
      <tbody>
        {units.map(({ unit, product, revision, place, isHeld, doubts }) => (
          <tr key={unit}>
            <th scope="row">
              <CodeText code={unit} kind="unit" />
            </th>
            <td>{product !== null && `${product} ${revision ?? ''}`}</td>
            <td>
              <PlaceTag place={place} />
            </td>
            <td>
              <PlaceText place={place} />
            </td>
            <td>{isHeld && <HoldTag isOpen />}</td>
            {hasDoubts && (
              <td data-label={tOwn('because')}>
                {doubts
                  .map(({ condition, because }) =>
                    tOwn('doubtOf', {
                      number: String(condition + 1),
                      why: because.map((doubt) => tOwn(`doubt.${doubt}`)).join('; '),
                    }),
                  )
                  .join(' ')}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
