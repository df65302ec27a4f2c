'use client';

import { IconAlertTriangleFilled, IconCircleCheckFilled, IconDeviceTabletOff } from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { Completeness as Facts } from '@/lib/domain/genealogy/answer';
import { formatMoment } from '@/lib/ui/format-moment';
import { numberRanges } from '@/lib/ui/number-ranges';
import classes from '@/lib/ui/trace/trace.module.css';

/**
 * Whether the answer may still grow: as of when it is complete, which devices owe which events, and, for good, which
 * events are lost.
 */
export function Completeness({ facts: { asOf, owing, lost, complete } }: { facts: Facts }) {
  const t = useTranslations('trace');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  if (complete)
    return (
      <p className={classes.complete} data-complete="true">
        <IconCircleCheckFilled aria-hidden />
        {t('complete', { time: timeOf(asOf) })}
      </p>
    );
  return (
    <>
      {owing.length > 0 && (
        <div className={classes.complete} data-complete="false" role="alert">
          <IconAlertTriangleFilled aria-hidden />
          <div>
            <strong>{t('owing.title', { count: owing.length, time: timeOf(asOf) })}</strong>
            <ul>
              {owing.map(({ device, missing, lastSeenAt }) => (
                <li key={device}>
                  {t('owing.device', { device, missing: numberRanges(missing), time: timeOf(lastSeenAt) })}
                </li>
              ))}
            </ul>
          </div>
        </div>
      )}
      {lost.length > 0 && (
        <div className={classes.complete} data-complete="false">
          <IconDeviceTabletOff aria-hidden />
          <div>
            <strong>{t('lost.title', { count: lost.length })}</strong>
            <ul>
              {lost.map(({ device, missing, highest, lastSeenAt, retiredAt, reason }) => (
                <li key={device}>
                  {t('lost.device', {
                    device,
                    count: missing.length,
                    missing: numberRanges(missing),
                    highest: String(highest),
                    seen: lastSeenAt === null ? 'never' : 'once',
                    time: lastSeenAt === null ? '' : timeOf(lastSeenAt),
                    retired: timeOf(retiredAt),
                    reason,
                  })}
                </li>
              ))}
            </ul>
          </div>
        </div>
      )}
    </>
  );
}
