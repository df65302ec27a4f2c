import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import { findEventsById } from '@/lib/data/log/find-events';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { refreshPlantTables } from '@/lib/data/plant/write-plant';
import { openPool, type Queryable } from '@/lib/data/pool';
import { showFlags } from '@/lib/data/record/judge-recorded';
import { Recorder } from '@/lib/data/record/recorder';
import { asWriter } from '@/lib/data/transaction';

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
  'salvage',
  'joining',
  'separation',
  'container',
  'hold',
  'voided',
  'flagged',
  'device',
] as const;

const EVENTS_AT_ONCE = 2000;
const rowSchema = z.looseObject({ position: z.number() });
const countSchema = z.object({ count: z.number() });
const idSchema = z.object({ event: z.string() });
const flagSchema = z.object({ event: z.string(), flags: z.array(z.unknown()) });

/**
 * Empties the read tables and makes them again from the log and the plant, in one transaction: readers see the old
 * ones until the new ones are complete. `ownerUrl` must connect as the owner of the tables.
 */
export async function rebuild(ownerUrl: string, report: (line: string) => void): Promise<void> {
  const pool = openPool({ url: ownerUrl, connectionCountMax: 2, use: 'writing' });
  try {
    await asWriter(pool, async (client) => {
      await client.query(`truncate ${READ_TABLES.map((table) => `read.${table}`).join(', ')}`);
      const { plant } = await loadPlant(client);
      await refreshPlantTables(client, plant);
      const db = await openReplay(client);
      await replay(client, new Recorder({ db, plant, recordedAtUs: 'already in the log' }), report);
      await restoreFlags(client);
      await restoreDevices(client);
    });
    await pool.query('analyze');
  } finally {
    await pool.end();
  }
}

/**
 * The database as the recorder met it when it recorded an event: of the log, it sees nothing that came later. What a
 * late event or a void changes depends on what was there by then, down to the last row.
 */
async function openReplay(client: Queryable): Promise<Queryable> {
  await client.query(
    `create or replace temp view replayed_event as
     select * from log.event where position <= current_setting('reelkin.replayed_to')::bigint`,
  );
  return {
    query: (text, values) =>
      client.query(text.replaceAll(/\blog\.event\b/g, 'pg_temp.replayed_event'), values),
  };
}

async function replay(client: Queryable, recorder: Recorder, report: (line: string) => void): Promise<void> {
  const total = countSchema.parse(
    (await client.query('select count(*) as count from log.event')).rows[0],
  ).count;
  let position = 0;
  let done = 0;
  while (done < total) {
    const { rows } = await client.query(
      `select e.position, ${EVENT_COLUMNS} from log.event e where e.position > $1 order by e.position limit $2`,
      [position, EVENTS_AT_ONCE],
    );
    if (rows.length === 0) break;
    const events = rows.map((row) => ({ event: readEventRow(row), position: rowSchema.parse(row).position }));
    const units = events.flatMap(({ event }) => ('unit' in event.body ? [event.body.unit] : []));
    await recorder.cache.units.require(units);
    for (const { event, position: replayedTo } of events) {
      const voided = await advance(client, event.id, replayedTo);
      await recorder.record({ event, recordedBy: '' }, { isVoided: voided && event.type !== 'event.voided' });
    }
    await recorder.flush();
    recorder.cache.clear();
    position = events.at(-1)?.position ?? position;
    done += rows.length;
    report(`${done} of ${total} events (${Math.floor((100 * done) / total)} %)`);
  }
}

const advancedSchema = z.object({ is_voided: z.boolean() });

/** Lets the replay see the log up to a position; says whether a void came before the event that stands there. */
async function advance(db: Queryable, id: string, position: number): Promise<boolean> {
  const { rows } = await db.query(
    `select set_config('reelkin.replayed_to', $2::text, true),
       exists (select from read.voided where event = $1::uuid) as is_voided`,
    [id, String(position)],
  );
  return advancedSchema.parse(rows[0]).is_voided;
}

async function restoreFlags(db: Queryable): Promise<void> {
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
