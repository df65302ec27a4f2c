import { useTimeZone, useTranslations } from 'use-intl';
import type { SlotBar } from '@/lib/domain/genealogy/slot-timeline';
import { formatMoment } from '@/lib/ui/format-moment';

/** Gives a stay in words: what, where, when, and its doubt. */
export function useBarWords(): (slot: string, bar: SlotBar) => string {
  const t = useTranslations('slotTimeline.bar');
  const tKind = useTranslations('tags.itemKind');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  return (slot, { item, kind, part, from, to, certain, possible, splice }) => {
    const isDoubtful = certain?.from !== possible.from || certain.to !== possible.to;
    const doubt =
      possible.to === null
        ? t('doubtOpen', { from: timeOf(possible.from) })
        : t('doubt', { from: timeOf(possible.from), to: timeOf(possible.to) });
    return [
      t('name', { kind: tKind(kind ?? 'reel'), item, slot, from: timeOf(from) }),
      to === null ? t('still') : t('to', { to: timeOf(to) }),
      ...(part === null ? [] : [t('part', { part })]),
      ...(splice === null ? [] : [t('spliced')]),
      ...(certain === null ? [t('unsure')] : []),
      ...(isDoubtful ? [doubt] : []),
    ].join(', ');
  };
}
