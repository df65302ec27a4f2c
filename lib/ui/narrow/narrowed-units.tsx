'use client';

import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { Certainty } from '@/lib/domain/genealogy/answer';
import type { NarrowedUnit } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import { CodeText } from '@/lib/ui/code-text';
import { fetchNarrowed } from '@/lib/ui/narrow/fetch-narrowed';
import classes from '@/lib/ui/narrow/narrow.module.css';
import { PlaceText } from '@/lib/ui/place-text';
import table from '@/lib/ui/table.module.css';
import { HoldTag } from '@/lib/ui/tags/hold-tag';
import { PlaceTag } from '@/lib/ui/tags/place-tag';

const MORE_COUNT = 500;

/** The units of one group; the first come with the page, more when they are asked for. */
export function NarrowedUnits({
  first,
  next,
  count,
  conditions,
  certainty,
}: {
  first: readonly NarrowedUnit[];
  next: string | null;
  count: number;
  conditions: readonly Condition[];
  certainty: Certainty;
}) {
  const t = useTranslations('trace.units');
  const [more, setMore] = useState({ units: first, next, isLoading: false, isFailed: false });
  if (count === 0) return <p>{t('none')}</p>;
  const load = async (): Promise<void> => {
    setMore((before) => ({ ...before, isLoading: true, isFailed: false }));
    const page = await fetchNarrowed({ conditions, certainty, limit: MORE_COUNT, cursor: more.next }).catch(
      () => null,
    );
    setMore((before) =>
      page === null
        ? { ...before, isLoading: false, isFailed: true }
        : { units: [...before.units, ...page.units], next: page.next, isLoading: false, isFailed: false },
    );
  };
  return (
    <>
      <p className="rk-only-print">{t('printed', { shown: more.units.length, count })}</p>
      <Rows units={more.units} hasDoubts={certainty === 'possible'} />
      <Group className="rk-no-print">
        {more.next !== null && (
          <Button variant="default" loading={more.isLoading} onClick={load}>
            {t('more')}
          </Button>
        )}
        <span className={classes.quiet} role="status">
          {t('count', { shown: more.units.length, count })}
          {more.isFailed && ` · ${t('failed')}`}
        </span>
      </Group>
    </>
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
