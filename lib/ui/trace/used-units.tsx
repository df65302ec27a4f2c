'use client';

import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { UsedUnit } from '@/lib/domain/genealogy/answer';
import { fetchUsed } from '@/lib/ui/trace/fetch-used';
import classes from '@/lib/ui/trace/trace.module.css';
import type { TraceQuestion } from '@/lib/ui/trace/trace-address';
import { UsedUnitRows } from '@/lib/ui/trace/used-unit-rows';

const MORE_COUNT = 500;

/** The units of an answer; the first come with the page, more by the API's cursor when they are asked for. */
export function UsedUnits({
  first,
  next,
  count,
  question,
}: {
  first: readonly UsedUnit[];
  next: string | null;
  count: number;
  question: TraceQuestion;
}) {
  const t = useTranslations('trace.units');
  const [more, setMore] = useState({ units: first, next, isLoading: false, isFailed: false });
  if (count === 0) return <p>{t('none')}</p>;

  const load = async (): Promise<void> => {
    setMore((before) => ({ ...before, isLoading: true, isFailed: false }));
    const page = await fetchUsed(question, { limit: MORE_COUNT, cursor: more.next }).catch(() => null);
    setMore((before) =>
      page === null
        ? { ...before, isLoading: false, isFailed: true }
        : { units: [...before.units, ...page.units], next: page.next, isLoading: false, isFailed: false },
    );
  };

  return (
    <>
      <p className="rk-only-print">{t('printed', { shown: more.units.length, count })}</p>
      <UsedUnitRows units={more.units} />
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
