import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import { findEventsById, findUnitHistories } from '@/lib/data/log/find-events';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { deleteOwnRows, insertOwnRows } from '@/lib/data/record/own-rows';
import { ensureContainers, refreshContainer } from '@/lib/data/record/refresh-container';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { refreshItem } from '@/lib/data/record/refresh-item';
import { refreshJoinings } from '@/lib/data/record/refresh-joining';
import { noteSlotDoubt, refreshAllSlots } from '@/lib/data/record/refresh-slot';
import { type UnitEntry, writeUnits } from '@/lib/data/record/unit-rows';
import type { EventOf, EventType } from '@/lib/domain/events/catalogue';
import { doubtUs, type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Moment } from '@/lib/domain/genealogy/moment';
import type { Plant } from '@/lib/domain/plant/plant';
import { formatInstant } from '@/lib/domain/time';
import { foldUnit } from '@/lib/domain/units/fold-unit';

/** Read tables that tell of events; those of the plant are as the plant stands now. */
const TABLES = [
  'unit',
  'item',
  'mount',
  'splice',
  'unmount',
  'slot_doubt',
  'pass',
  'direct_draw',
  'removal',
  'salvage',
  'joining',
  'separation',
  'container',
  'hold',
  'voided',
  'flagged',
  'device_retirement',
] as const;

/** Functions that read them. */
const FUNCTIONS = ['grey_until', 'clearing_of'] as const;

const OF_THE_RECORD = new RegExp(String.raw`\bread\.(${TABLES.join('|')}|${FUNCTIONS.join('|')})\b`, 'g');
const functionSchema = z.object({ text: z.string() });
const keptSchema = z.object({ is_voided: z.boolean() });

const positionSchema = z.object({ position: z.number() });
const relatedSchema = z.object({ unit: z.string() });
const voidedSchema = z.object({ event: z.string() });
const lateSchema = z.object({
  position: z.number(),
  recorded_at: z.number(),
  recorded_by: z.string(),
  named_unit: z.string().nullable(),
});

/** Types of events that decide who is in a where-used answer and how; all others only tell where units are. */
export const BEARING_TYPES: readonly EventType[] = [
  'unit.started',
  'unit.processed',
  'unit.joined',
  'unit.separated',
  'part.removed',
  'part.installed',
  'item.received',
  'item.mounted',
  'item.unmounted',
  'item.spliced',
];

/** An event that arrived after a moment, when (microseconds) and by whom; `unit`: what it or what it voids is about. */
export type LateEvent = {
  event: LoggedEvent;
  position: number;
  recordedAtUs: number;
  recordedBy: string;
  unit: string | null;
};

/**
 * The record as it was at a moment, made again beside the real one, in tables that only this connection sees, out of
 * the events that are admitted. `db` answers every statement of the real record from it.
 */
export class MomentRecord {
  readonly db: Queryable;
  /** The record as it is. */
  readonly live: Queryable;
  readonly moment: Moment;
  readonly #plant: Plant;

  private constructor(options: { live: Queryable; db: Queryable; plant: Plant; moment: Moment }) {
    this.live = options.live;
    this.db = options.db;
    this.moment = options.moment;
    this.#plant = options.plant;
  }

  /** Makes the empty tables; they go with the transaction, which must be rolled back. */
  static async open(live: Queryable, moment: Moment): Promise<MomentRecord> {
    const tables = TABLES.map((table) => `create temp table ${table} (like read.${table} including all)`);
    await live.query(
      [...tables, 'create temp table moment_event (like log.event including indexes)'].join('; '),
    );
    const { rows } = await live.query(
      `select pg_get_functiondef(('read.' || name || '(uuid)')::regprocedure) as text from unnest($1::text[]) as f(name)`,
      [FUNCTIONS],
    );
    for (const row of rows) await live.query(ofMoment(functionSchema.parse(row).text));
    const db: Queryable = { query: (text, values) => live.query(ofMoment(text), values) };
    const { plant } = await loadPlant(live);
    return new MomentRecord({ live, db, plant, moment });
  }

  /** Admits the events at the positions that a statement selects, as far as they were there at the moment. */
  async admit(positions: string, values: unknown[]): Promise<void> {
    const { knownTo, untilUs } = this.moment;
    const [known, happened] = [`$${values.length + 1}::bigint`, `$${values.length + 2}::timestamptz`];
    const { rows } = await this.live.query(
      `with kept as (
         insert into pg_temp.moment_event
         select e.* from log.event e
         where e.position in (${positions}) and e.position <= ${known} and e.at <= ${happened}
           and e.type <> 'event.voided'
           and not exists (select from pg_temp.moment_event m where m.position = e.position)
         returning *
       ),
       void as (
         insert into pg_temp.voided (event, void)
         select e.id, v.id from kept e
         join log.event v on v.type = 'event.voided' and v.body ->> 'event' = e.id::text and v.position <= ${known}
         returning event
       )
       select ${EVENT_COLUMNS}, exists (select from void where void.event = e.id) as is_voided
       from kept e order by e.at, e.id`,
      [...values, knownTo, momentText(untilUs)],
    );
    const counting = rows.filter((row) => !keptSchema.parse(row).is_voided).map(readEventRow);
    await this.#record(counting);
  }

  /** Positions of the events that were admitted. */
  async positions(): Promise<number[]> {
    const { rows } = await this.live.query('select position from pg_temp.moment_event');
    return rows.map((row) => positionSchema.parse(row).position);
  }

  /**
   * What arrived after the moment, up to a position, and can change who is in a where-used answer and how: among the
   * given events and the voids that name one of them or of those that were admitted; in the order of arrival.
   */
  async findLate(positions: readonly number[], to: number): Promise<LateEvent[]> {
    const { knownTo, untilUs } = this.moment;
    const { rows } = await this.live.query(
      `select ${EVENT_COLUMNS}, e.position, e.recorded_at, e.recorded_by, named.unit as named_unit
       from log.event e
       left join log.event named on e.type = 'event.voided' and named.id = (e.body ->> 'event')::uuid
       where e.position > $2 and e.position <= $3
         and case when e.type = 'event.voided'
           then named.type = any($5) and (
             named.position = any($1::bigint[]) or named.position in (select position from pg_temp.moment_event)
           )
           else e.type = any($5) and e.position = any($1::bigint[]) and e.at <= $4::timestamptz
         end
       order by e.position`,
      [positions, knownTo, to, momentText(untilUs), BEARING_TYPES],
    );
    return rows.map((row) => {
      const { position, recorded_at, recorded_by, named_unit } = lateSchema.parse(row);
      const event = readEventRow(row);
      const unit = named_unit ?? subjectUnit(event);
      return { event, position, recordedAtUs: recorded_at, recordedBy: recorded_by, unit };
    });
  }

  /**
   * Units whose standing may depend on another unit's events, those of late events included: one is in the other, or
   * gave it a part, or they use up the grey zone of a splice at one station.
   */
  async relatedUnits(late: readonly LateEvent[]): Promise<ReadonlySet<string>> {
    const { rows } = await this.live.query(
      `with known as materialized (
         select type, unit, station, coalesce(body ->> 'into', body ->> 'from', body ->> 'fromUnit') as other
         from log.event
         where position = any($1::bigint[]) or position in (select position from pg_temp.moment_event)
       )
       select unnest(array[unit, other]) as unit from known
       where type in ('unit.joined', 'unit.separated') or (type = 'part.installed' and other is not null)
       union
       select unit from known
       where type = 'unit.processed' and station in (select station from known where type = 'item.spliced')`,
      [late.map(({ position }) => position)],
    );
    return new Set(rows.map((row) => relatedSchema.parse(row).unit));
  }

  /** Lets late events arrive, in their order: a void takes what it names away, or keeps it from counting when it comes. */
  async play(late: readonly LateEvent[]): Promise<void> {
    await this.live.query(
      `insert into pg_temp.moment_event select * from log.event where position = any($1::bigint[])`,
      [late.map(({ position }) => position)],
    );
    let arrived: LateEvent[] = [];
    for (const each of late) {
      if (each.event.type !== 'event.voided') {
        arrived.push(each);
        continue;
      }
      await this.#arrive(arrived);
      arrived = [];
      await this.#void(each.event);
    }
    await this.#arrive(arrived);
  }

  /** Records what no void had named before it came. */
  async #arrive(late: readonly LateEvent[]): Promise<void> {
    if (late.length === 0) return;
    const { rows } = await this.live.query(
      `with earlier as (
         insert into pg_temp.voided (event, void)
         select e.id, v.id from log.event e
         join log.event v on v.type = 'event.voided' and v.body ->> 'event' = e.id::text and v.position < e.position
         where e.position = any($1::bigint[])
         on conflict do nothing
         returning event
       )
       select event from earlier union select event from pg_temp.voided`,
      [late.map(({ position }) => position)],
    );
    const voided = new Set(rows.map((row) => voidedSchema.parse(row).event));
    await this.#record(late.flatMap(({ event }) => (voided.has(event.id) ? [] : [event])));
  }

  /** Runs work whose effect on the record stays only if it answers true. */
  async attempt(work: () => Promise<boolean>): Promise<boolean> {
    await this.live.query('savepoint attempt');
    const isKept = await work();
    await this.live.query(isKept ? 'release savepoint attempt' : 'rollback to savepoint attempt');
    return isKept;
  }

  async #isVoided(id: string): Promise<boolean> {
    const { rowCount } = await this.live.query('select from pg_temp.voided where event = $1', [id]);
    return rowCount !== 0;
  }

  async #void({ id, body }: EventOf<'event.voided'>): Promise<void> {
    const wasVoided = await this.#isVoided(body.event);
    const [target] = await findEventsById(this.db, [body.event]);
    if (target?.type === 'event.voided') return;
    await this.live.query('insert into pg_temp.voided (event, void) values ($1, $2)', [body.event, id]);
    if (target === undefined || wasVoided) return;
    await deleteOwnRows(this.db, target);
    await this.#fold([target]);
  }

  /** Adds the rows that events own, and folds what they take part in. */
  async #record(events: readonly LoggedEvent[]): Promise<void> {
    await insertOwnRows(this.db, events);
    await this.#fold(events);
  }

  async #fold(events: readonly LoggedEvent[]): Promise<void> {
    const { db } = this;
    const touched = events.map(touchedBy);
    const units = [...new Set(touched.flatMap((each) => each.units))];
    const histories = await findUnitHistories(db, units);
    const entries = units.map((unit): [string, UnitEntry] => {
      const history = histories.get(unit) ?? [];
      return [unit, { state: foldUnit(unit, history, this.#plant), last: history.at(-1) ?? null }];
    });
    await writeUnits(db, new Map(entries), this.#plant);
    for (const item of new Set(touched.flatMap((each) => each.items))) await refreshItem(db, item);
    const containers = new Set(touched.flatMap((each) => each.containers));
    const known = [...new Set([...containers, ...touched.flatMap((each) => each.mentioned)])];
    if (known.length > 0) await ensureContainers(db, known);
    for (const container of containers) await refreshContainer(db, container);
    const joined = [...new Set(touched.flatMap(({ joining }) => (joining === null ? [] : [joining.inner])))];
    if (joined.length > 0) await refreshJoinings(db, joined);
    const changes = events.filter(changesSlot);
    for (const event of changes)
      await noteSlotDoubt(db, { station: event.station, slot: event.body.slot, us: doubtUs(event) });
    if (changes.length > 0) await refreshAllSlots(db);
    const exhausted = entries.flatMap(([, { state }]) => state.exhausted);
    await refreshHolds(db, [...touched.flatMap((each) => each.holds), ...exhausted]);
  }
}

function momentText(us: number): string {
  return us === Number.POSITIVE_INFINITY ? 'infinity' : formatInstant(us);
}

function ofMoment(text: string): string {
  return text.replaceAll(OF_THE_RECORD, 'pg_temp.$1').replaceAll(/\blog\.event\b/g, 'pg_temp.moment_event');
}
