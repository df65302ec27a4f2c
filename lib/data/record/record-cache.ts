import { z } from 'zod';
import { openInstantColumn } from '@/lib/data/columns';
import { findContainerHistories, findItemHistories, findUnitHistories } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { loadUnits, type UnitEntry } from '@/lib/data/record/unit-rows';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { type HoldTargetKind, holdTargetKindSchema, itemKindSchema } from '@/lib/domain/events/vocabulary';
import type { ItemFacts, OpenHold } from '@/lib/domain/gate/known';
import { formatInstant, type OrderKey } from '@/lib/domain/time';

const itemRow = z.object({
  item: z.string(),
  kind: itemKindSchema,
  part: z.string().nullable(),
  lot: z.string().nullable(),
  is_retired: z.boolean(),
});
const mountRow = z.object({
  station: z.string(),
  slot: z.string(),
  item: z.string(),
  from_at: z.number(),
  to_at: openInstantColumn,
  ending: z.string().nullable(),
  grey_until: openInstantColumn.nullable(),
});
const holdRow = z.object({
  hold: z.string(),
  target_kind: holdTargetKindSchema,
  target: z.string(),
  reason: z.string(),
  is_automatic: z.boolean(),
  placed_at: z.number(),
  released_at: openInstantColumn,
});
const joiningRow = z.object({
  inner_unit: z.string(),
  outer_unit: z.string(),
  event: z.string(),
  at: z.number(),
  to_event: z.string(),
  to_at: openInstantColumn,
});

/**
 * A mount interval in microseconds; `toUs` is infinite while it lasts. `grey` names the item whose end was spliced to
 * it, and until when that may still be drawn from.
 */
export type MountFact = {
  slot: string;
  item: string;
  fromUs: number;
  toUs: number;
  grey: { item: string; untilUs: number } | null;
};
/** What stands in a station's slots now, and since when (microseconds) nothing has changed there. */
export type StationSlots = { open: MountFact[]; changedUs: number };
/** A hold with its period in microseconds; `releasedUs` is infinite while it lasts. */
export type HoldFact = OpenHold & { isAutomatic: boolean; placedUs: number; releasedUs: number };
/** A stay of a unit in another one, from its joining to its separation; an open end lies after every event. */
export type JoiningFact = { inner: string; outer: string; from: OrderKey; to: OrderKey };

/** Reads by key what is not in memory yet, many keys in one statement, and keeps it until it is forgotten. */
class KeyedCache<T> {
  readonly #known = new Map<string, T>();
  readonly #load: (keys: string[]) => Promise<Map<string, T>>;
  readonly #missing: T;

  constructor(options: { load: (keys: string[]) => Promise<Map<string, T>>; missing: T }) {
    this.#load = options.load;
    this.#missing = options.missing;
  }

  async require(keys: Iterable<string>): Promise<void> {
    const wanted = [...new Set(keys)].filter((key) => !this.#known.has(key));
    if (wanted.length === 0) return;
    const loaded = await this.#load(wanted);
    for (const key of wanted) this.#known.set(key, loaded.get(key) ?? this.#missing);
  }

  /** What is in memory; the caller has required the key before. */
  get(key: string): T {
    return this.#known.get(key) ?? this.#missing;
  }

  set(key: string, value: T): void {
    this.#known.set(key, value);
  }

  forget(key: string): void {
    this.#known.delete(key);
  }

  forgetWhere(test: (value: T) => boolean): void {
    for (const [key, value] of this.#known) if (test(value)) this.#known.delete(key);
  }

  clear(): void {
    this.#known.clear();
  }

  get size(): number {
    return this.#known.size;
  }
}

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return groups;
}

/** Key of a hold target in the cache. */
export function holdKey(kind: HoldTargetKind, id: string): string {
  return JSON.stringify([kind, id]);
}

/** The part of the record that a batch of events is judged on, read in bulk and kept while it cannot change. */
export function openRecordCache(db: Queryable) {
  const units = new KeyedCache<UnitEntry | null>({ load: (keys) => loadUnits(db, keys), missing: null });
  const items = new KeyedCache<ItemFacts | null>({ load: (keys) => loadItems(db, keys), missing: null });
  const itemHistories = new KeyedCache<LoggedEvent[]>({
    load: (keys) => findItemHistories(db, keys),
    missing: [],
  });
  const slots = new KeyedCache<StationSlots>({
    load: (keys) => loadStationSlots(db, keys),
    missing: { open: [], changedUs: Number.NEGATIVE_INFINITY },
  });
  const histories = new KeyedCache<LoggedEvent[]>({
    load: (keys) => findUnitHistories(db, keys),
    missing: [],
  });
  const holds = new KeyedCache<HoldFact[]>({ load: (keys) => loadHolds(db, keys), missing: [] });
  const containers = new KeyedCache<LoggedEvent[] | null>({
    load: (keys) => loadContainers(db, keys),
    missing: null,
  });
  const joiningsOfInner = new KeyedCache<JoiningFact[]>({
    load: async (keys) => grouped(await loadJoinings(db, 'inner_unit', keys), (row) => row.inner),
    missing: [],
  });
  const joiningsOfOuter = new KeyedCache<JoiningFact[]>({
    load: async (keys) => grouped(await loadJoinings(db, 'outer_unit', keys), (row) => row.outer),
    missing: [],
  });
  const all = [
    units,
    histories,
    items,
    itemHistories,
    slots,
    holds,
    containers,
    joiningsOfInner,
    joiningsOfOuter,
  ];
  return {
    units,
    /** By unit: its events that count, in order. */
    histories,
    items,
    /** By item: its own events that count, in order. */
    itemHistories,
    /** By station. */
    slots,
    holds,
    /** By container: its own events that count, in order; null for one that is not known. */
    containers,
    joiningsOfInner,
    joiningsOfOuter,
    clear: () => {
      for (const cache of all) cache.clear();
    },
    entryCount: () => all.reduce((count, cache) => count + cache.size, 0),
  };
}

export type RecordCache = ReturnType<typeof openRecordCache>;

async function loadItems(db: Queryable, items: string[]): Promise<Map<string, ItemFacts>> {
  const { rows } = await db.query(
    'select item, kind, part, lot, is_retired from read.item where item = any($1)',
    [items],
  );
  return new Map(rows.map((row) => itemRow.parse(row)).map((row) => [row.item, itemFacts(row)]));
}

/** What the gate asks of an item, from its row. */
export function itemFacts({
  item,
  kind,
  part,
  lot,
  is_retired: isRetired,
}: z.infer<typeof itemRow>): ItemFacts {
  return { item, kind, part, lot, isRetired };
}

const MOUNT_COLUMNS = `m.station, m.slot, m.item, m.from_at, m.to_at, g.item as ending,
       case when m.is_spliced then read.grey_until(m.event) end as grey_until`;
const MOUNTS = 'read.mount m left join read.splice g on m.is_spliced and g.event = m.event';

function readMount(row: unknown): MountFact & { station: string } {
  const { station, slot, item, from_at: fromUs, to_at: toUs, ending, grey_until } = mountRow.parse(row);
  const grey = ending === null || grey_until === null ? null : { item: ending, untilUs: grey_until };
  return { station, slot, item, fromUs, toUs, grey };
}

const changedRow = z.object({ station: z.string(), changed_at: z.number().nullable() });

async function loadStationSlots(db: Queryable, stations: string[]): Promise<Map<string, StationSlots>> {
  const [open, unmounted] = await Promise.all([
    db.query(
      `select ${MOUNT_COLUMNS} from ${MOUNTS}
       where m.station = any($1) and m.to_at = 'infinity'`,
      [stations],
    ),
    db.query(
      `select s.station, (select max(at) from read.unmount u where u.station = s.station) as changed_at
       from unnest($1::text[]) s(station)`,
      [stations],
    ),
  ]);
  const mounts = grouped(open.rows.map(readMount), (row) => row.station);
  return new Map(
    unmounted.rows.map((row) => {
      const { station, changed_at } = changedRow.parse(row);
      const standing = mounts.get(station) ?? [];
      const changedUs = Math.max(
        changed_at ?? Number.NEGATIVE_INFINITY,
        ...standing.map((mount) => mount.fromUs),
      );
      return [station, { open: standing, changedUs }];
    }),
  );
}

/** What stood in a station's slots at a moment (an RFC 3339 time): who mounts at that very moment counts. */
export async function loadMountsAt(db: Queryable, station: string, at: string): Promise<MountFact[]> {
  const { rows } = await db.query(
    `select ${MOUNT_COLUMNS} from ${MOUNTS}
     where m.station = $1 and m.from_at <= $2::timestamptz and m.to_at > $2::timestamptz`,
    [station, at],
  );
  return rows.map(readMount);
}

/** What stood in a station's slots just before an event, whose own effect, if it is recorded already, does not count. */
export async function loadMountsBefore(
  db: Queryable,
  station: string,
  { atUs, id }: OrderKey,
): Promise<MountFact[]> {
  const { rows } = await db.query(
    `select ${MOUNT_COLUMNS} from ${MOUNTS}
     where m.station = $1 and (m.from_at, m.event) < ($2::timestamptz, $3::uuid)
       and (m.to_at > $2::timestamptz or (m.to_at = $2::timestamptz and m.to_event >= $3::uuid))`,
    [station, formatInstant(atUs), id],
  );
  return rows.map(readMount);
}

async function loadHolds(db: Queryable, keys: string[]): Promise<Map<string, HoldFact[]>> {
  const targets = keys.map((key) => z.tuple([z.string(), z.string()]).parse(JSON.parse(key)));
  const { rows } = await db.query(
    `select h.hold, h.target_kind, h.target, h.reason, h.is_automatic, h.placed_at, h.released_at
     from unnest($1::text[], $2::text[]) as k(kind, id)
     join read.hold h on h.target_kind = k.kind and h.target = k.id
     order by h.placed_at, h.hold`,
    [targets.map(([kind]) => kind), targets.map(([, id]) => id)],
  );
  const facts = rows.map((row): HoldFact => {
    const {
      hold,
      target_kind: kind,
      target: id,
      reason,
      is_automatic,
      placed_at,
      released_at,
    } = holdRow.parse(row);
    return {
      hold,
      kind,
      id,
      reason,
      isAutomatic: is_automatic,
      placedUs: placed_at,
      releasedUs: released_at,
    };
  });
  return grouped(facts, (fact) => holdKey(fact.kind, fact.id));
}

const containerRow = z.object({ container: z.string() });

async function loadContainers(db: Queryable, names: string[]): Promise<Map<string, LoggedEvent[]>> {
  const [known, histories] = await Promise.all([
    db.query('select container from read.container where container = any($1)', [names]),
    findContainerHistories(db, names),
  ]);
  return new Map(
    known.rows.map((row) => {
      const { container } = containerRow.parse(row);
      return [container, histories.get(container) ?? []];
    }),
  );
}

async function loadJoinings(
  db: Queryable,
  side: 'inner_unit' | 'outer_unit',
  units: string[],
): Promise<JoiningFact[]> {
  const { rows } = await db.query(
    `select inner_unit, outer_unit, event, at, to_event, to_at
     from read.joining where ${side} = any($1) order by at, event`,
    [units],
  );
  return rows.map((row) => {
    const { inner_unit: inner, outer_unit: outer, event, at, to_event, to_at } = joiningRow.parse(row);
    return { inner, outer, from: { atUs: at, id: event }, to: { atUs: to_at, id: to_event } };
  });
}
