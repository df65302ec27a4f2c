import { useTimeZone, useTranslations } from 'use-intl';
import type { EventType, WireEvent } from '@/lib/domain/events/catalogue';
import type { Cause, CausingEvent, Change } from '@/lib/domain/genealogy/difference';
import { CodeText } from '@/lib/ui/code-text';
import { ChangedUnits } from '@/lib/ui/difference/changed-units';
import classes from '@/lib/ui/difference/difference.module.css';
import { EventFacts } from '@/lib/ui/events/event-facts';
import { eventMessageKey } from '@/lib/ui/events/event-name';
import { Timeline } from '@/lib/ui/events/timeline';
import { formatMoment } from '@/lib/ui/format-moment';
import { Moment } from '@/lib/ui/moment';

/** Each event that changed the answer, when it happened and arrived, and under it the units that it changed. */
export function Causes({ events, changes }: { events: readonly CausingEvent[]; changes: readonly Change[] }) {
  const causes = new Map(events.map((cause) => [cause.event.id, cause]));
  const history = events.map(({ event, recordedAt, recordedBy }) => ({
    event,
    recordedAt,
    recordedBy,
    voidedBy: null,
    flags: [],
  }));
  return (
    <>
      <Timeline
        history={history}
        belowOf={({ event }) => {
          const changed = changes.filter(({ by }) => 'event' in by && by.event === event.id);
          return (
            <>
              <About event={event} changed={changed} />
              <Arrival cause={causes.get(event.id)} />
              <Voided event={causes.get(event.id)?.voids ?? null} />
              <ChangedUnits changes={changed} />
            </>
          );
        }}
      />
      {amongGroups(changes).map(({ cause, units }) => (
        <section key={cause.from + cause.to} className={classes.among}>
          <Among cause={cause} />
          <ChangedUnits changes={units} />
        </section>
      ))}
    </>
  );
}

/** What an event is about, where neither its facts nor the units that it changed say so. */
function About({ event, changed }: { event: WireEvent; changed: readonly Change[] }) {
  const t = useTranslations('difference.events');
  const { body } = event;
  if (OF_ITEMS.includes(event.type) && 'item' in body && body.item !== undefined)
    return (
      <p>
        {t('about')} <CodeText code={body.item} kind="item" />
      </p>
    );
  if (!('unit' in body) || changed.some(({ unit }) => unit === body.unit)) return null;
  return (
    <p>
      {t('about')} <CodeText code={body.unit} kind="unit" />
    </p>
  );
}

/** Events whose facts leave out the item that they are about. */
const OF_ITEMS: readonly EventType[] = ['item.received', 'item.counted', 'item.inspected', 'item.retired'];

/** When an event arrived here, and from which device: this decides which of two answers it is in. */
function Arrival({ cause }: { cause: CausingEvent | undefined }) {
  const t = useTranslations('difference.events');
  const timeZone = useTimeZone() ?? 'UTC';
  if (cause === undefined) return null;
  const time = formatMoment(Date.parse(cause.recordedAt), { timeZone, precision: 'second' });
  const { device } = cause.event;
  return (
    <>
      <p>{device === undefined ? t('arrived', { time }) : t('arrivedFrom', { time, device })}</p>
      {cause.isRefused ? <p>{t('refused')}</p> : cause.changesOwing && <p>{t('owing')}</p>}
    </>
  );
}

/** The event that a void takes away, in one line. */
function Voided({ event }: { event: CausingEvent['voids'] }) {
  const t = useTranslations('difference.events');
  const tEvent = useTranslations('events');
  if (event === null) return null;
  return (
    <p className={classes.voids}>
      <span>{t('voids')}</span> <Moment at={event.at} precision="second" />{' '}
      <b>{tEvent(eventMessageKey(event.type))}</b> {event.station} <EventFacts event={event} />{' '}
      {OF_ITEMS.includes(event.type) && 'item' in event.body && event.body.item !== undefined && (
        <CodeText code={event.body.item} kind="item" />
      )}
    </p>
  );
}

type AmongCause = Extract<Cause, { among: number }>;

function Among({ cause }: { cause: AmongCause }) {
  const t = useTranslations('difference.events');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  return (
    <>
      <h3>{t('amongTitle')}</h3>
      <p>{t('among', { count: cause.among, from: timeOf(cause.from), to: timeOf(cause.to) })}</p>
    </>
  );
}

function amongGroups(changes: readonly Change[]): { cause: AmongCause; units: Change[] }[] {
  const groups = new Map<string, { cause: AmongCause; units: Change[] }>();
  for (const change of changes) {
    if ('event' in change.by) continue;
    const key = `${change.by.from} ${change.by.to}`;
    const group = groups.get(key) ?? { cause: change.by, units: [] };
    group.units.push(change);
    groups.set(key, group);
  }
  return [...groups.values()];
}
