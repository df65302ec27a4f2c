import Link from 'next/link';
import type { CSSProperties } from 'react';
import type { SlotBar } from '@/lib/domain/genealogy/slot-timeline';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';
import { traceAddress } from '@/lib/ui/trace/trace-address';

/** A stay as a bar: hatched as far as it is possible, full where it is certain; it leads to where-used. */
export function SlotBarLink({
  bar,
  span,
  nowMs,
  words,
  isReached,
}: {
  bar: SlotBar;
  span: TimeSpan;
  /** Up to when a stay has lasted that has not ended. */
  nowMs: number;
  words: string;
  isReached: boolean;
}) {
  const { item, part, certain, possible, splice, event } = bar;
  const shown = clipped(possible, { ...span, toMs: Math.min(span.toMs, nowMs) });
  return (
    <Link
      href={traceAddress({ item })}
      prefetch={false}
      draggable={false}
      className={classes.bar}
      style={within(shown, span)}
      aria-label={words}
      title={words}
      tabIndex={isReached ? 0 : -1}
      data-bar={event}
      data-open={possible.to === null}
    >
      {certain !== null && <i style={within(clipped(certain, shown), shown)} />}
      {splice !== null && <b aria-hidden="true" className={classes.tooth} />}
      <span>
        <strong>{item}</strong> {part}
      </span>
    </Link>
  );
}

type Stay = { from: string; to: string | null };

function clipped({ from, to }: Stay, { fromMs, toMs }: TimeSpan): TimeSpan {
  return {
    fromMs: Math.max(fromMs, Date.parse(from)),
    toMs: to === null ? toMs : Math.min(toMs, Date.parse(to)),
  };
}

function within(inner: TimeSpan, outer: TimeSpan): CSSProperties {
  const length = Math.max(1, outer.toMs - outer.fromMs);
  const percent = (ms: number) => `${Math.max(0, (100 * ms) / length)}%`;
  return { left: percent(inner.fromMs - outer.fromMs), width: percent(inner.toMs - inner.fromMs) };
}
