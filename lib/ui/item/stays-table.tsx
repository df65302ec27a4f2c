import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { SlotStay } from '@/lib/domain/items/item-record';
import { formatMoment } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/item/item.module.css';
import { Moment } from '@/lib/ui/moment';
import { SPANS_MS, timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';
import table from '@/lib/ui/table.module.css';
import { TraceLink } from '@/lib/ui/trace/trace-link';
import { useDuration } from '@/lib/ui/use-duration';

/** Every slot that an item stood in, each stay as times and as a bar on one scale for all. */
export function StaysTable({ stays, now }: { stays: readonly SlotStay[]; now: string }) {
  const t = useTranslations('item.mounts');
  const duration = useDuration();
  const timeZone = useTimeZone() ?? 'UTC';
  if (stays.length === 0) return <p>{t('none')}</p>;
  const nowMs = Date.parse(now);
  const endOf = (stay: SlotStay) => (stay.until === null ? nowMs : Date.parse(stay.until));
  const firstMs = Math.min(...stays.map((stay) => Date.parse(stay.from)));
  const lengthMs = Math.max(1, Math.max(...stays.map(endOf)) - firstMs);
  const dayOf = (ms: number) => formatMoment(ms, { timeZone, precision: 'day' });
  const percent = (ms: number) => `${(100 * (ms - firstMs)) / lengthMs}%`;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('station')}</th>
          <th scope="col">{t('slot')}</th>
          <th scope="col">{t('from')}</th>
          <th scope="col">{t('until')}</th>
          <th scope="col">{t('length')}</th>
          <th scope="col" className={classes.scale}>
            {t('scale', { from: dayOf(firstMs), to: dayOf(firstMs + lengthMs) })}
          </th>
        </tr>
      </thead>
      <tbody>
        {stays.map((stay) => (
          <tr key={stay.event}>
            <th scope="row">
              <TraceLink about="station" code={stay.station} />
            </th>
            <td data-label={t('slot')}>
              <Link href={slotsAt(stay, nowMs)} prefetch={false} title={t('slotsThen')}>
                {stay.slot}
              </Link>
            </td>
            <td data-label={t('from')}>
              <Moment at={stay.from} />
            </td>
            <td data-label={t('until')}>
              {stay.until === null ? <strong>{t('still')}</strong> : <Moment at={stay.until} />}
            </td>
            <td data-label={t('length')}>{duration(endOf(stay) - Date.parse(stay.from))}</td>
            <td aria-hidden="true" className={classes.scale}>
              <i
                data-open={stay.until === null}
                style={{
                  marginLeft: percent(Date.parse(stay.from)),
                  width: `${(100 * (endOf(stay) - Date.parse(stay.from))) / lengthMs}%`,
                }}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The timeline of the slot's station while the item came into it, at most a day of it. */
function slotsAt({ station, from, until }: SlotStay, nowMs: number): string {
  const fromMs = Date.parse(from);
  const toMs = Math.min(fromMs + SPANS_MS.day, until === null ? nowMs : Date.parse(until));
  const marginMs = Math.max(60_000, Math.round((toMs - fromMs) / 10));
  return timelineAddress(station, { fromMs: fromMs - marginMs, toMs: toMs + marginMs });
}
