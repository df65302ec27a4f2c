'use client';

import { Button, Group } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/trace/trace.module.css';

const MORE_COUNT = 500;

/** A page of units, and the cursor of the next one; null behind the last. */
type Page<Unit> = { units: readonly Unit[]; next: string | null };

/** Units of an answer, `count` in all; the first come with the page, more by the API's cursor when they are asked for. */
export function PagedUnits<Unit>({
  first,
  next,
  count,
  readPage,
  children,
}: {
  first: readonly Unit[];
  next: string | null;
  count: number;
  readPage: (page: { limit: number; cursor: string | null }) => Promise<Page<Unit>>;
  /** Shows those that are here. */
  children: (units: readonly Unit[]) => ReactNode;
}) {
  const t = useTranslations('trace.units');
  const [more, setMore] = useState({ units: first, next, isLoading: false, isFailed: false });
  if (count === 0) return <p>{t('none')}</p>;
  const load = async (): Promise<void> => {
    setMore((before) => ({ ...before, isLoading: true, isFailed: false }));
    const page = await readPage({ limit: MORE_COUNT, cursor: more.next }).catch(() => null);
    setMore((before) =>
      page === null
        ? { ...before, isLoading: false, isFailed: true }
        : { units: [...before.units, ...page.units], next: page.next, isLoading: false, isFailed: false },
    );
  };
  return (
    <>
      <p className="rk-only-print">{t('printed', { shown: more.units.length, count })}</p>
      {children(more.units)}
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
