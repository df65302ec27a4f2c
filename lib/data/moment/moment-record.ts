import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import { findEventsById, findUnitHistories } from '@/lib/data/log/find-events';
import { rewindDevices } from '@/lib/data/moment/admit-devices';
import type { LateEvent } from '@/lib/data/moment/late-event';
import { makeMomentTables, momentText, ofMoment } from '@/lib/data/moment/moment-tables';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { deleteOwnRows, insertOwnRows } from '@/lib/data/record/own-rows';
import { refreshItem } from '@/lib/data/record/refresh-item';
import { refreshJoinings } from '@/lib/data/record/refresh-joining';
import { refreshSlot } from '@/lib/data/record/refresh-slot';
import { writeUnits } from '@/lib/data/record/unit-rows';
import type { EventOf } from '@/lib/domain/events/catalogue';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Moment } from '@/lib/domain/genealogy/moment';
import type { Plant } from '@/lib/domain/plant/plant';
import { foldUnit } from '@/lib/domain/units/fold-unit';

const voidedSchema = z.object({ id: z.string() });

/**
 * The record as it was at a moment, beside the real one, in tables that only this connection sees: the rows of today
 * are copied as far as they stood so then, and only what has changed since is made again. `db` answers every statement
 * of the real record from it, of what was admitted.
 */
export class MomentRecord {
  readonly db: Queryable;
  /** The record as it is. */
  readonly live: Queryable;
  readonly moment: Moment;
  readonly plant: Plant;
  readonly #admitted = new Map<string, Set<string>>();

  private constructor(options: { live: Queryable; db: Queryable; plant: Plant; moment: Moment }) {
    this.live = options.live;
    this.db = options.db;
    this.moment = options.moment;
    this.plant = options.plant;
  }

  /** Makes the tables; they go with the transaction, which must be rolled back. */
  static async open(live: Queryable, moment: Moment): Promise<MomentRecord> {
    await makeMomentTables(live, moment);
    const db: Queryable = { query: (text, values) => live.query(ofMoment(text), values) };
    const { plant } = await loadPlant(live);
    const record = new MomentRecord({ live, db, plant, moment });
    await record.#restore();
    await rewindDevices(live, moment);
    return record;
  }

  /** Puts back the rows of what counted then and was voided later: what is copied lacks them. */
  async #restore(): Promise<void> {
    const { knownTo, untilUs } = this.moment;
    const { rows } = await this.live.query(
      `select ${EVENT_COLUMNS} from pg_temp.undone e
       where e.position <= $1 and (e.at <= $2::timestamptz or e.type = 'device.retired')
         and not exists (select from pg_temp.voided v where v.event = e.id)`,
      [knownTo, momentText(untilUs)],
    );
    await insertOwnRows(this.db, rows.map(readEventRow));
  }

  /** Those of some keys of a kind that have not been admitted yet; from now on they are. */
  take(kind: string, keys: Iterable<string>): string[] {
    const known = this.#admitted.get(kind) ?? new Set();
    this.#admitted.set(kind, known);
    const fresh = [...new Set(keys)].filter((key) => !known.has(key));
    for (const key of fresh) known.add(key);
    return fresh;
  }

  /** What has been admitted of a kind. */
  admitted(kind: string): string[] {
    return [...(this.#admitted.get(kind) ?? [])];
  }

  /**
   * Lets late events arrive, in their order: a void takes what it names away, or keeps it from counting when it comes;
   * a number that a device owed is no longer owed, whenever the event happened.
   */
  async play(late: readonly LateEvent[]): Promise<void> {
    let arrived: LateEvent[] = [];
    for (const each of late) {
      if (each.event.type !== 'event.voided') {
        arrived.push(each);
        continue;
      }
      await this.#arrive(arrived);
      arrived = [];
      await this.#void(each, each.event);
    }
    await this.#arrive(arrived);
  }

  async #note(late: readonly LateEvent[]): Promise<void> {
    const positions = late.flatMap(({ position }) => (position === null ? [] : [position]));
    await this.live.query('insert into pg_temp.played select unnest($1::bigint[])', [positions]);
    for (const { event, received } of late)
      if (received !== null)
        await this.live.query(
          `insert into pg_temp.device (device, received, last_seen_at) values ($1, $2::int8multirange, 'epoch')
           on conflict (device) do update set received = excluded.received`,
          [event.device, received],
        );
  }

  /** Records what no void had named before it came. */
  async #arrive(late: readonly LateEvent[]): Promise<void> {
    if (late.length === 0) return;
    await this.#note(late);
    const { rows } = await this.live.query(
      'select v.event as id from pg_temp.voided v where v.event = any($1::uuid[])',
      [late.map(({ event }) => event.id)],
    );
    const voided = new Set(rows.map((row) => voidedSchema.parse(row).id));
    const events = late.flatMap(({ event, position }) =>
      position === null || voided.has(event.id) || event.atUs > this.moment.untilUs ? [] : [event],
    );
    await insertOwnRows(this.db, events);
    await this.#fold(events);
  }

  async #void(late: LateEvent, { body }: EventOf<'event.voided'>): Promise<void> {
    const { rowCount } = await this.live.query('select from pg_temp.voided where event = $1', [body.event]);
    const [target] = await findEventsById(this.db, [body.event]);
    await this.#note([late]);
    if (target === undefined || target.type === 'event.voided' || rowCount !== 0) return;
    await deleteOwnRows(this.db, target);
    await this.#fold([target]);
  }

  /** Runs work whose effect on the record stays only if it answers true. */
  async attempt(work: () => Promise<boolean>): Promise<boolean> {
    await this.live.query('savepoint attempt');
    const isKept = await work();
    await this.live.query(isKept ? 'release savepoint attempt' : 'rollback to savepoint attempt');
    return isKept;
  }

  /** Makes again what events take part in, as far as it decides who is in an answer and how. */
  async #fold(events: readonly LoggedEvent[]): Promise<void> {
    const { db, plant } = this;
    const touched = events.map(touchedBy);
    const units = [...new Set(touched.flatMap((each) => each.units))];
    const histories = await findUnitHistories(db, units);
    const entries = units.map((unit) => {
      const history = histories.get(unit) ?? [];
      return [unit, { state: foldUnit(unit, history, plant), last: history.at(-1) ?? null }] as const;
    });
    await writeUnits(db, new Map(entries), plant);
    for (const item of new Set(touched.flatMap((each) => each.items))) await refreshItem(db, item);
    const joined = [...new Set(touched.flatMap(({ joining }) => (joining === null ? [] : [joining.inner])))];
    if (joined.length > 0) await refreshJoinings(db, joined);
    for (const event of events.filter(changesSlot)) await refreshSlot(db, event);
  }
}
