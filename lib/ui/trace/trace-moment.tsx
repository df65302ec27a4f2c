import { IconClock } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import { formatMoment } from '@/lib/ui/format-moment';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';
import { Trouble } from '@/lib/ui/trouble';

/** Gives the moments that a question is about in words, or null when it is about now. */
export function useMomentWords(): (question: TraceQuestion) => string | null {
  const t = useTranslations('trace.asked');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  return ({ at, knownAt }) => {
    const words = [
      at !== undefined && t('at', { at: timeOf(at) }),
      knownAt !== undefined && t('knownAt', { knownAt: timeOf(knownAt) }),
    ].filter((word) => word !== false);
    return words.length === 0 ? null : words.join(', ');
  };
}

/** Says that an answer is not the one of now, and leads to it. */
export function TraceMoment({ question }: { question: TraceQuestion }) {
  const t = useTranslations('trace.moment');
  const { at, knownAt, ...now } = question;
  if (at === undefined && knownAt === undefined) return null;
  return (
    <Trouble meaning="quiet" shape={IconClock} title={t('shown')}>
      <Link href={traceAddress(now)}>{t('now')}</Link>
    </Trouble>
  );
}
