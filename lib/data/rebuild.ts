import type pg from 'pg';
import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import { findEventsById } from '@/lib/data/log/find-events';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { refreshPlantTables } from '@/lib/data/plant/write-plant';
import { openPool, type Queryable } from '@/lib/data/pool';
import { CopyRows } from '@/lib/data/rebuild/copy-rows';
import { LoadSubjects } from '@/lib/data/rebuild/load-subjects';
import { readSubjects, type SubjectKind } from '@/lib/data/rebuild/read-subjects';
import { setIndexesAside } from '@/lib/data/rebuild/set-indexes-aside';
import { showFlags } from '@/lib/data/record/judge-recorded';
import { insertOwnRows } from '@/lib/data/record/own-rows';
import { ensureContainers, shipContents } from '@/lib/data/record/refresh-container';
import { refreshHolds } from '@/lib/data/record/refresh-holds';
import { refreshJoinings } from '@/lib/data/record/refresh-joining';
import { noteSlotDoubt, refreshAllSlots } from '@/lib/data/record/refresh-slot';
import { asWriter, type Writing } from '@/lib/data/transaction';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** Every table that is made again; the log, the plant and the people stay. */
export const READ_TABLES = [
  'plant_slot',
  'bom_slot',
  'unit',
  'item',
  'mount',
  'splice',
  'unmount',
  'slot_doubt',
  'pass',
  'direct_draw',
  'removal',
  'label_print',
  'salvage',
  'joining',
  'separation',
  'container',
  'hold',
  'voided',
  'flagged',
  'device',
  'device_retirement',
] as const;

const KINDS: readonly SubjectKind[] = ['unit', 'item', 'container'];
const REPORTED_EACH = 50_000;
const KEYS_AT_ONCE = 1000;

const countSchema = z.object({ count: z.number() });
const idSchema = z.object({ event: z.string() });
const flagSchema = z.object({ event: z.string(), flags: z.array(z.unknown()) });

/**
 * Empties the read tables and makes them again from the log and the plant, in one transaction: readers see nothing of
 * it before it is complete. Every rule is the one by which events are recorded: the rows that an event owns, the folds
 * of units, items and containers, and the statements that end mounts and joinings. `ownerUrl` must connect as the owner
 * of the tables.
 */
export async function rebuild(ownerUrl: string, report: (line: string) => void): Promise<void> {
  // COPY and cursors want connections that take one statement after the other.
  const pool = openPool({ url: ownerUrl, connectionCountMax: 2, use: 'plain' });
  try {
    await asWriter(pool, async (db) => {
      // The log cannot change while the writer's turn lasts: another connection reads what the writer sees.
      await db.turn;
      const reader = await pool.connect();
      try {
        await makeAgain(db, reader, report);
      } finally {
        reader.release();
      }
    });
    await pool.query('analyze');
  } finally {
    await pool.end();
  }
}

async function makeAgain(db: Writing, reader: pg.ClientBase, report: (line: string) => void): Promise<void> {
  await db.query(`set local maintenance_work_mem = '512MB'`);
  await db.query(`truncate ${READ_TABLES.map((table) => `read.${table}`).join(', ')}`);
  const makeIndexes = await setIndexesAside(db, 'read');
  const { plant } = await loadPlant(db);
  await refreshPlantTables(db, plant);
  const voidedAt = await restoreVoids(db);
  const rows = new CopyRows(db.client);
  const loaded = new LoadSubjects({ rows, plant, voidedAt });
  const done = await loadAll(loaded, reader, report);
  await rows.end();
  report('Making the indexes and what joins the histories');
  await makeIndexes();
  await inParts([...loaded.containers], (part) => ensureContainers(db, part));
  for (const doubt of loaded.slotDoubts.values()) await noteSlotDoubt(db, doubt);
  await refreshAllSlots(db);
  await inParts([...loaded.joined], (part) => refreshJoinings(db, part));
  await inParts(loaded.shipped, (part) => shipContents(db, part));
  const flagged = await restoreFlags(db);
  const holds = [...(await findPlacedHolds(db)), ...loaded.exhausted, ...flagged];
  await inParts([...new Set(holds)], (part) => refreshHolds(db, part));
  await restoreLabels(db);
  await restoreDevices(db);
  await insertOwnRows(db, await findRetirements(db));
  report(`${done} of ${done} events (100 %)`);
}

async function loadAll(
  loaded: LoadSubjects,
  reader: pg.ClientBase,
  report: (line: string) => void,
): Promise<number> {
  const { rows } = await reader.query(
    `select count(*) as count from log.event where unit is not null or type like any('{item.%,container.%}')`,
  );
  const total = countSchema.parse(rows[0]).count;
  let done = 0;
  let reported = 0;
  for (const kind of KINDS)
    for await (const subject of readSubjects(reader, kind)) {
      await loaded.load(kind, subject);
      done += subject.arrived.length;
      if (done < reported + REPORTED_EACH) continue;
      reported = done;
      report(`${done} of ${total} events (${Math.floor((99 * done) / total)} %)`);
    }
  return done;
}

async function inParts<T>(keys: readonly T[], work: (part: T[]) => Promise<void>): Promise<void> {
  for (let start = 0; start < keys.length; start += KEYS_AT_ONCE)
    await work(keys.slice(start, start + KEYS_AT_ONCE));
}

const voidSchema = z.object({ event: z.string(), position: z.number() });

/**
 * Notes what each void names, unless that was another void that had come before it. Returns the position of the first
 * void of each event.
 */
async function restoreVoids(db: Queryable): Promise<Map<string, number>> {
  await db.query(
    `insert into read.voided (event, void)
     select (v.body ->> 'event')::uuid, v.id
     from log.event v
     left join log.event e on e.id = (v.body ->> 'event')::uuid and e.position < v.position
     where v.type = 'event.voided' and e.type is distinct from 'event.voided'`,
  );
  const { rows } = await db.query(
    `select v.event, min(e.position) as position from read.voided v join log.event e on e.id = v.void group by v.event`,
  );
  return new Map(
    rows.map((row) => {
      const { event, position } = voidSchema.parse(row);
      return [event, position];
    }),
  );
}

async function findRetirements(db: Queryable): Promise<LoggedEvent[]> {
  const { rows } = await db.query(
    `select ${EVENT_COLUMNS} from log.event e
     where e.type = 'device.retired' and not exists (select from read.voided v where v.event = e.id)`,
  );
  return rows.map(readEventRow);
}

async function findPlacedHolds(db: Queryable): Promise<string[]> {
  const { rows } = await db.query(`select id as event from log.event where type = 'hold.placed'`);
  return rows.map((row) => idSchema.parse(row).event);
}

async function restoreFlags(db: Queryable): Promise<string[]> {
  const { rows } = await db.query(
    `select distinct on (j.event) j.event, j.flags
     from log.judgement j
     where not exists (select from read.voided v where v.event = j.event)
     order by j.event, j.position desc`,
  );
  const judged = new Map(rows.map((row) => [idSchema.parse(row).event, flagSchema.parse(row).flags]));
  const flagged = (await findEventsById(db, [...judged.keys()])).map((event) => ({
    event,
    flags: judged.get(event.id) ?? [],
  }));
  await showFlags(
    db,
    flagged.filter(({ flags }) => flags.length > 0),
  );
  return [...judged.keys()];
}

/** Labels have subjects of every kind and no fold: their rows are what their events say. */
async function restoreLabels(db: Queryable): Promise<void> {
  await db.query(
    `insert into read.label_print (event, kind, code, at, copies)
     select e.id, e.body -> 'target' ->> 'kind', e.body -> 'target' ->> 'id', e.at, (e.body ->> 'copies')::integer
     from log.event e
     where e.type = 'label.printed' and not exists (select from read.voided v where v.event = e.id)`,
  );
}

async function restoreDevices(db: Queryable): Promise<void> {
  await db.query(
    `insert into read.device (device, received, last_seen_at)
     select device, range_agg(int8range(device_seq, device_seq, '[]')), max(arrived_at)
     from (
       select device, device_seq, recorded_at as arrived_at from log.event where device is not null
       union all
       select device, device_seq, refused_at from log.refusal where device is not null and code not in ('time_in_future', 'device_seq_reused')
     ) arrivals
     group by device`,
  );
}
