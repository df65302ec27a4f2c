'use client';

import { Anchor, Button, NativeSelect, TextInput } from '@mantine/core';
import Link from 'next/link';
import { type FormEvent, useEffect, useState } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { whereUsedAnswerSchema } from '@/lib/domain/genealogy/answer';
import type { SlotTimeline } from '@/lib/domain/genealogy/slot-timeline';
import { formatMoment } from '@/lib/ui/format-moment';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';
import { Section } from '@/lib/ui/section';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';
import type { PickedTime } from '@/lib/ui/slot-timeline/use-time-drag';
import { type TraceQuestion, traceAddress, traceQuery } from '@/lib/ui/trace/trace-address';

/** Items whose units are counted at once. */
const ITEMS_MAX = 8;

/** A time in a slot as a question: by drag above, or by typing here; how many units each answer has, before it is opened. */
export function TimeQuestion({
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
  const t = useTranslations('slotTimeline.ask');
  const timeZone = useTimeZone() ?? 'UTC';
  const [isWrong, setWrong] = useState(false);
  const shown = picked ?? { slot: timeline.slots[0]?.slot ?? '', ...span };
  const clock = (ms: number) => plantClockAt(new Date(ms).toISOString(), timeZone);
  const timeOf = (ms: number) => formatMoment(ms, { timeZone, precision: 'second' });

  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const msOf = (name: string) =>
      Date.parse(instantOnPlantClock(String(form.get(name) ?? ''), timeZone) ?? '');
    const [fromMs, toMs] = [msOf('from'), msOf('to')];
    const isSpan = fromMs < toMs;
    setWrong(!isSpan);
    if (isSpan) onPicked({ slot: String(form.get('slot') ?? ''), fromMs, toMs });
  };

  return (
    <Section title={t('title')}>
      <form
        key={`${shown.slot} ${shown.fromMs} ${shown.toMs}`}
        className={`${classes.ask} rk-no-print`}
        onSubmit={submit}
      >
        <NativeSelect
          name="slot"
          label={t('slot')}
          defaultValue={shown.slot}
          data={timeline.slots.map(({ slot }) => slot)}
        />
        <TextInput name="from" type="datetime-local" label={t('from')} defaultValue={clock(shown.fromMs)} />
        <TextInput
          name="to"
          type="datetime-local"
          label={t('to')}
          defaultValue={clock(shown.toMs)}
          error={isWrong && t('wrong')}
        />
        <Button type="submit" variant="outline">
          {t('submit')}
        </Button>
        <p>{t('zone', { zone: timeZone })}</p>
      </form>
      {picked !== null && (
        <div className={classes.answer} aria-live="polite">
          <p>
            <strong>
              {t('asked', { slot: picked.slot, from: timeOf(picked.fromMs), to: timeOf(picked.toMs) })}
            </strong>
          </p>
          <Questions timeline={timeline} picked={picked} />
        </div>
      )}
    </Section>
  );
}

function Questions({ timeline, picked }: { timeline: SlotTimeline; picked: PickedTime }) {
  const t = useTranslations('slotTimeline.ask');
  const items = itemsIn(timeline, picked);
  const time = {
    station: timeline.station,
    from: new Date(picked.fromMs).toISOString(),
    to: new Date(picked.toMs).toISOString(),
  };
  return (
    <ul>
      {items.length === 0 && <li>{t('nothing')}</li>}
      {items.slice(0, ITEMS_MAX).map((item) => (
        <CountedLink key={item} question={{ item, ...time }} name={t('item', { item })} />
      ))}
      {items.length > ITEMS_MAX && <li>{t('more', { count: items.length - ITEMS_MAX })}</li>}
      <CountedLink question={time} name={t('all')} />
    </ul>
  );
}

/** A link to an answer with the numbers of its units, which are asked for when it is shown. */
function CountedLink({ question, name }: { question: TraceQuestion; name: string }) {
  const t = useTranslations('slotTimeline.ask');
  const query = traceQuery(question);
  const [found, setFound] = useState<{ query: string; counts: Counts | null } | null>(null);
  useEffect(() => {
    const control = new AbortController();
    const tell = (counts: Counts | null) => {
      if (!control.signal.aborted) setFound({ query, counts });
    };
    countUnits(query, control.signal).then(tell, () => tell(null));
    return () => control.abort();
  }, [query]);
  const isKnown = found !== null && found.query === query;
  return (
    <li>
      <Anchor component={Link} href={traceAddress(question)} prefetch={false}>
        {name}
      </Anchor>{' '}
      {!isKnown ? t('counting') : found.counts === null ? t('failed') : t('counts', found.counts)}
    </li>
  );
}

type Counts = { units: number; certain: number; possible: number };

async function countUnits(query: string, signal: AbortSignal): Promise<Counts> {
  const response = await fetch(`/api/trace/where-used?${query}&limit=1`, { signal });
  if (!response.ok) throw new Error(`The units were answered with ${response.status}.`);
  const { units, certain, possible } = whereUsedAnswerSchema.parse(await response.json()).counts;
  return { units, certain, possible };
}

function itemsIn({ slots }: SlotTimeline, { slot, fromMs, toMs }: PickedTime): string[] {
  const bars = slots.find((each) => each.slot === slot)?.bars ?? [];
  const touched = bars.filter(
    ({ possible }) =>
      Date.parse(possible.from) <= toMs && (possible.to === null || Date.parse(possible.to) >= fromMs),
  );
  return [...new Set(touched.map(({ item }) => item))];
}
