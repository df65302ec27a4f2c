'use client';

import { IconAlertTriangleFilled, IconCircleCheckFilled } from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { Owing } from '@/lib/domain/genealogy/answer';
import { formatMoment } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/trace/trace.module.css';

/** Whether the answer may still grow: as of when it is complete, or which devices owe which events. */
export function Completeness({ asOf, owing }: { asOf: string; owing: readonly Owing[] }) {
  const t = useTranslations('trace');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  if (owing.length === 0)
    return (
      <p className={classes.complete} data-complete="true">
        <IconCircleCheckFilled aria-hidden />
        {t('complete', { time: timeOf(asOf) })}
      </p>
    );
  return (
    <div className={classes.complete} data-complete="false" role="alert">
      <IconAlertTriangleFilled aria-hidden />
      <div>
        <strong>{t('owing.title', { count: owing.length, time: timeOf(asOf) })}</strong>
        <ul>
          {owing.map(({ device, missing, lastSeenAt }) => (
            <li key={device}>
              {t('owing.device', { device, missing: rangesText(missing), time: timeOf(lastSeenAt) })}
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}

function rangesText(ranges: readonly (readonly [number, number])[]): string {
  return ranges.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}
