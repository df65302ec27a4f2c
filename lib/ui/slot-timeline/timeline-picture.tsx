'use client';

import { type KeyboardEvent, useRef, useState } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { SlotTimeline } from '@/lib/domain/genealogy/slot-timeline';
import { PassLane } from '@/lib/ui/slot-timeline/pass-lane';
import { SlotBarLink } from '@/lib/ui/slot-timeline/slot-bar';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import { timeMarks } from '@/lib/ui/slot-timeline/time-marks';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';
import { useBarWords } from '@/lib/ui/slot-timeline/use-bar-words';
import { type PickedTime, useTimeDrag } from '@/lib/ui/slot-timeline/use-time-drag';

/** Slots one under the other with what stood in them, the units above; `onPicked` is told a time that someone asks about. */
export function TimelinePicture({
  timeline,
  span,
  picked,
  onPicked,
}: {
  timeline: SlotTimeline;
  span: TimeSpan;
  picked: PickedTime | null;
  onPicked: (picked: PickedTime) => void;
}) {
  const t = useTranslations('slotTimeline');
  const timeZone = useTimeZone() ?? 'UTC';
  const wordsOf = useBarWords();
  const picture = useRef<HTMLDivElement>(null);
  const { drag, handlersOf } = useTimeDrag(span, onPicked);
  const first = timeline.slots.find(({ bars }) => bars.length > 0)?.bars[0]?.event ?? '';
  const [reached, setReached] = useState(first);
  const shown = drag ?? picked;
  const percent = (ms: number) => `${(100 * (ms - span.fromMs)) / (span.toMs - span.fromMs)}%`;

  const reach = (event: string) => {
    setReached(event);
    picture.current?.querySelector<HTMLElement>(`[data-bar="${CSS.escape(event)}"]`)?.focus();
  };
  const onKey = (key: KeyboardEvent<HTMLElement>) => {
    const at = positionOf(timeline, reached);
    if (at === null || key.altKey || key.ctrlKey || key.metaKey) return;
    if (key.key === 'Enter' && key.shiftKey) onPicked(timeOfBar(timeline, at, span));
    else {
      const next = nextBar(timeline, at, key.key);
      if (next === null) return;
      reach(next);
    }
    key.preventDefault();
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the links inside it
    <div className={classes.picture} ref={picture} onKeyDown={onKey}>
      <div className={classes.lane} aria-hidden="true">
        <span />
        <div className={classes.axis}>
          {timeMarks(span, timeZone).map(({ ms, text }) => (
            <span key={ms} style={{ left: percent(ms) }}>
              {text}
            </span>
          ))}
        </div>
      </div>
      <PassLane passes={timeline.passes} span={span} />
      <ul aria-label={t('picture', { station: timeline.station })} className={classes.lanes}>
        {timeline.slots.map(({ slot, holds, bars }) => (
          <li key={slot} className={classes.lane}>
            <span className={classes.slot}>
              <strong>{slot}</strong>
              {bars.length === 0 && <small>{t('empty')}</small>}
            </span>
            <div className={classes.track} data-slot={slot} data-holds={holds} {...handlersOf(slot)}>
              {bars.map((bar) => (
                <SlotBarLink
                  key={bar.event}
                  bar={bar}
                  span={span}
                  nowMs={Date.parse(timeline.asOf)}
                  words={wordsOf(slot, bar)}
                  isReached={bar.event === reached}
                />
              ))}
              {shown?.slot === slot && (
                <i
                  className={classes.picked}
                  style={{ left: percent(shown.fromMs), right: `calc(100% - ${percent(shown.toMs)})` }}
                />
              )}
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}

type Position = { lane: number; bar: number };

function positionOf({ slots }: SlotTimeline, event: string): Position | null {
  for (const [lane, { bars }] of slots.entries()) {
    const bar = bars.findIndex((each) => each.event === event);
    if (bar >= 0) return { lane, bar };
  }
  return null;
}

/** The bar that an arrow key leads to: its neighbour in the slot, or the one of that time in the nearest slot with any. */
function nextBar({ slots }: SlotTimeline, { lane, bar }: Position, key: string): string | null {
  const here = slots[lane]?.bars[bar];
  if (here === undefined) return null;
  if (key === 'ArrowLeft' || key === 'ArrowRight')
    return slots[lane]?.bars[bar + (key === 'ArrowLeft' ? -1 : 1)]?.event ?? null;
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return null;
  const others = key === 'ArrowUp' ? slots.slice(0, lane).reverse() : slots.slice(lane + 1);
  const { bars = [] } = others.find((each) => each.bars.length > 0) ?? {};
  const atThatTime = bars.findLast((each) => Date.parse(each.from) <= Date.parse(here.from));
  return (atThatTime ?? bars[0])?.event ?? null;
}

function timeOfBar({ slots }: SlotTimeline, { lane, bar }: Position, span: TimeSpan): PickedTime {
  const { slot = '', bars = [] } = slots[lane] ?? {};
  const { from, to } = bars[bar]?.possible ?? { from: '', to: null };
  return {
    slot,
    fromMs: Math.max(span.fromMs, Date.parse(from)),
    toMs: to === null ? span.toMs : Math.min(span.toMs, Date.parse(to)),
  };
}
