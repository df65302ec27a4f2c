import { useTimeZone, useTranslations } from 'use-intl';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { formatMoment } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/trace/trace.module.css';
import type { TraceQuestion } from '@/lib/ui/trace/trace-address';

/** The conditions beside the leading one, in words. */
export function AskedConditions({ question, subject }: { question: TraceQuestion; subject: TraceSubject }) {
  const t = useTranslations('trace.asked');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'minute' });
  const { station, operator, from, to } = question;
  const words = [
    station !== undefined && subject.about !== 'station' && t('station', { station }),
    operator !== undefined && subject.about !== 'operator' && t('operator', { operator }),
    from !== undefined && t('from', { from: timeOf(from) }),
    to !== undefined && t('to', { to: timeOf(to) }),
  ].filter((word) => word !== false);
  return words.length === 0 ? null : <p className={classes.asked}>{words.join(', ')}</p>;
}
