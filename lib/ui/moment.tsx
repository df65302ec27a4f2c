'use client';

import { useTimeZone } from 'use-intl';
import { formatMoment, type Precision } from '@/lib/ui/format-moment';

/** A moment (milliseconds, or RFC 3339) on the plant's clock; the exact instant is in its markup. */
export function Moment({ at, precision = 'minute' }: { at: number | string; precision?: Precision }) {
  const timeZone = useTimeZone() ?? 'UTC';
  const ms = typeof at === 'number' ? at : Date.parse(at);
  return (
    <time dateTime={new Date(ms).toISOString()} style={{ whiteSpace: 'nowrap' }}>
      {formatMoment(ms, { timeZone, precision })}
    </time>
  );
}
