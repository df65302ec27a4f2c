import type pg from 'pg';
import { z } from 'zod';
import { appendEvents } from '@/lib/server/append-events';
import { REEL_SLOTS, STATIONS } from '@/scripts/bench/line/bench-plant';
import { beganMs } from '@/scripts/bench/line/generate-events';

const writtenSchema = z.object({ rows: z.coerce.number() });

export type LateMount = { ms: number; rowsWritten: number; unitsMoved: number };

/** Rows written in all tables so far. */
const WRITTEN = `
  select sum(n_tup_ins + n_tup_upd + n_tup_del) as rows from pg_stat_user_tables where schemaname in ('log', 'read')`;

/** A mount that comes late into the middle of a reel's time: counts the rows that recording it writes. */
export async function measureLateMount(
  owner: pg.ClientBase,
  unitCount: number,
  number: number,
): Promise<LateMount> {
  const slot = REEL_SLOTS[number];
  if (slot === undefined) throw new Error('There is no such slot.');
  const station = STATIONS[slot.stationIndex]?.code ?? '';
  const atMs = beganMs(Math.floor(unitCount / 2) + 100, slot.stationIndex) - 500;
  // Measured again, the history has been given this before: codes and ids are those of the run.
  const run = Date.now().toString(16).padStart(12, '0');
  const item = `LATE-${run}`;
  const time = atMs.toString(16).padStart(12, '0');
  const id = (kind: number) => `${time.slice(0, 8)}-${time.slice(8)}-7${kind}00-9000-${run}`;
  const at = new Date(atMs).toISOString();
  const received = { item, kind: 'reel', part: slot.part, lot: 'LATE' };
  await appendEvents([{ id: id(1), type: 'item.received', at, body: received }], { kind: 'token' });
  const before = await written(owner);
  const begin = performance.now();
  const mounted = {
    id: id(2),
    type: 'item.mounted',
    at,
    station,
    gate: 'record',
    body: { item, slot: slot.slot },
  };
  const [result] = await appendEvents([mounted], { kind: 'token' });
  const ms = performance.now() - begin;
  if (result?.outcome !== 'recorded')
    throw new Error(`The late mount was not recorded: ${JSON.stringify(result)}`);
  const rowsWritten = (await written(owner)) - before;
  const moved = await countMoved(owner, item);
  await takeBack(mounted.id);
  return { ms, rowsWritten, unitsMoved: moved };
}

/** The history is as it was: other models know nothing of the late mount. */
async function takeBack(event: string): Promise<void> {
  const id = event.replace('-7200-', '-7300-');
  const at = new Date().toISOString();
  const body = { event, reason: 'measured' };
  const [result] = await appendEvents([{ id, type: 'event.voided', at, body }], { kind: 'token' });
  if (result?.outcome !== 'recorded') throw new Error(`The late mount stays: ${JSON.stringify(result)}`);
}

async function countMoved(owner: pg.ClientBase, item: string): Promise<number> {
  const { rows } = await owner.query(
    `select count(*) as rows from read.mount m
     join read.pass p on p.station = m.station and p.high >= m.from_at and p.high < m.to_at where m.item = $1`,
    [item],
  );
  return writtenSchema.parse(rows[0]).rows;
}

/** Sessions report what they wrote when they are idle, a second late at most; asked for, at once. */
async function written(owner: pg.ClientBase): Promise<number> {
  const read = async () => {
    await owner.query('select pg_stat_clear_snapshot()');
    return writtenSchema.parse((await owner.query(WRITTEN)).rows[0]).rows;
  };
  for (let last = await read(); ; ) {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const now = await read();
    if (now === last) return now;
    last = now;
  }
}
