import { useId } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { DisagreeingCount } from '@/lib/domain/balance/count-check';
import classes from '@/lib/ui/counts/counts.module.css';
import { formatMoment } from '@/lib/ui/format-moment';

const WIDTH = 520;
const HEIGHT = 240;
const LEFT = 56;
const TOP = 24;
const BOTTOM = HEIGHT - 32;
const RIGHT = WIDTH - 16;

/** What must be left of a reel as its units use it, its two counts, and the intervals that were not scanned, hatched. */
export function RemainderChart({ count }: { count: DisagreeingCount }) {
  const t = useTranslations('counts.chart');
  const timeZone = useTimeZone() ?? 'UTC';
  const hatch = useId();
  const { item, from, to, curve, missed, expected } = count;
  const last = to ?? curve.at(-1) ?? from;
  const fromMs = Date.parse(from.at);
  const lengthMs = Math.max(1, Date.parse(last.at) - fromMs);
  const highest = Math.max(1, from.left, last.left);
  const x = (at: string) =>
    LEFT + (RIGHT - LEFT) * Math.min(1, Math.max(0, (Date.parse(at) - fromMs) / lengthMs));
  const y = (left: number) => BOTTOM - (BOTTOM - TOP) * (Math.max(0, left) / highest);
  const steps = curve.map((point) => `H${x(point.at).toFixed(1)}V${y(point.left).toFixed(1)}`).join('');
  const dayOf = (at: string) => formatMoment(Date.parse(at), { timeZone, precision: 'minute' });
  const told = { before: from.left, expected: expected.max, found: to?.left ?? 0 };
  return (
    <figure className={classes.chart}>
      <figcaption>
        {t('title', { item })}
        <span className={classes.unseen}>{t('text', told)}</span>
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <defs>
          <pattern
            id={hatch}
            width="8"
            height="8"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect width="8" height="8" fill="var(--rk-caution-paper)" />
            <line x1="0" y1="0" x2="0" y2="8" stroke="var(--rk-caution)" strokeWidth="2" />
          </pattern>
        </defs>
        {missed.map((each) => (
          <rect
            key={JSON.stringify(each)}
            x={x(each.from)}
            y={TOP}
            width={Math.max(4, x(each.to) - x(each.from))}
            height={BOTTOM - TOP}
            fill={`url(#${hatch})`}
          />
        ))}
        <path d={`M${LEFT} ${BOTTOM}H${RIGHT}M${LEFT} ${TOP}V${BOTTOM}`} className={classes.axis} />
        <path d={`M${x(from.at)} ${y(from.left)}${steps}H${x(last.at)}`} className={classes.line} />
        <circle cx={x(from.at)} cy={y(from.left)} r="5" className={classes.counted} />
        {to !== null && (
          <>
            <circle cx={x(to.at)} cy={y(to.left)} r="7" className={classes.wrong} />
            <path d={`M${x(to.at)} ${y(to.left)}V${y(expected.max)}`} className={classes.gap} />
          </>
        )}
        <text x={LEFT - 8} y={TOP + 5} textAnchor="end">
          {highest}
        </text>
        <text x={LEFT - 8} y={BOTTOM + 5} textAnchor="end">
          0
        </text>
        <text x={LEFT} y={HEIGHT - 8}>
          {dayOf(from.at)}
        </text>
        <text x={RIGHT} y={HEIGHT - 8} textAnchor="end">
          {dayOf(last.at)}
        </text>
      </svg>
      <ul className={classes.legend} aria-hidden="true">
        <li data-mark="line">{t('expected')}</li>
        <li data-mark="dot">{t('counted')}</li>
        {missed.length > 0 && <li data-mark="hatch">{t('interval')}</li>}
      </ul>
    </figure>
  );
}
