import pg from 'pg';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { appendEvents } from '@/lib/server/append-events';
import { generateEvents } from '@/scripts/bench/line/generate-events';

const WARM_BATCHES = 20;
const BATCH_SIZE = 500;
const BATCHES = 20;
const SINGLES = 2000;
const CLIENTS = 50;
const SHARED = 6000;

/** Events a second: through the use case, and as bare INSERTs of the same bytes into a table with one key. */
export type AppendRate = { name: string; reelkin: number; bare: number; target: number };

type Send = (events: WireEvent[]) => Promise<unknown>;

/** Each event recorded under the gate and durable, beside PostgreSQL's own pace with the same clients. */
export async function measureAppend(url: string): Promise<AppendRate[]> {
  const source = lineEvents();
  const bare = await openBareTable(url);
  try {
    for (let batch = 0; batch < WARM_BATCHES; batch += 1) await record(take(source, BATCH_SIZE));
    const rates: AppendRate[] = [];
    const compare = async (
      name: string,
      options: { batches: WireEvent[][]; clients: number; target: number },
    ) => {
      const { batches, clients, target } = options;
      const reelkin = await rateOf(batches, clients, record);
      rates.push({ name, reelkin, bare: await rateOf(batches, clients, bare.insert), target });
    };
    const single = (count: number) => take(source, count).map((event) => [event]);
    await compare('one event a transaction, 1 client', { batches: single(SINGLES), clients: 1, target: 0.4 });
    await compare('one event a transaction, 50 clients', {
      batches: single(SHARED),
      clients: CLIENTS,
      target: 0.4,
    });
    const batches = Array.from({ length: BATCHES }, () => take(source, BATCH_SIZE));
    await compare('batches of 500, 1 client', { batches, clients: 1, target: 0.5 });
    return rates;
  } finally {
    await bare.end();
  }
}

/** The line's events as its tablets send them: with the person, the device and the device's own number. */
export function* lineEvents(): Generator<WireEvent> {
  const numbers = new Map<string, number>();
  for (const event of generateEvents(1_000_000)) {
    const device = `tab-${event.station ?? 'office'}`;
    const deviceSeq = (numbers.get(device) ?? 0) + 1;
    numbers.set(device, deviceSeq);
    yield { ...event, operator: 'op-1', device, deviceSeq };
  }
}

export function take(source: Iterator<WireEvent>, count: number): WireEvent[] {
  return Array.from({ length: count }, () => {
    const next = source.next();
    if (next.done) throw new Error('The line has no more events.');
    return next.value;
  });
}

async function record(events: WireEvent[]): Promise<void> {
  const results = await appendEvents(events, { kind: 'token' });
  const bad = results.find(({ outcome }) => outcome !== 'recorded');
  if (bad !== undefined)
    throw new Error(`An event of the benchmark was not recorded: ${JSON.stringify(bad)}`);
}

/** Events a second when so many clients share the batches. */
export async function rateOf(batches: readonly WireEvent[][], clients: number, send: Send): Promise<number> {
  const begin = performance.now();
  let next = 0;
  const client = async () => {
    for (let batch = batches[next]; batch !== undefined; batch = batches[next]) {
      next += 1;
      await send(batch);
    }
  };
  await Promise.all(Array.from({ length: clients }, client));
  return batches.flat().length / ((performance.now() - begin) / 1000);
}

const COLUMNS =
  'id, type, at, at_sent, unit, station, operator, device, device_seq, uncertainty_ms, gate, body, recorded_at, recorded_by'.split(
    ', ',
  );

async function openBareTable(url: string): Promise<{ insert: Send; end: () => Promise<void> }> {
  const pool = new pg.Pool({ connectionString: url, max: CLIENTS });
  await pool.query('create schema bare');
  await pool.query('create table bare.event (like log.event)');
  await pool.query('alter table bare.event alter column position drop not null, add primary key (id)');
  const insert: Send = (events) => {
    const tuples = events.map(
      (_, row) => `(${COLUMNS.map((_column, column) => `$${row * COLUMNS.length + column + 1}`).join(', ')})`,
    );
    const text = `insert into bare.event (${COLUMNS.join(', ')}) values ${tuples.join(', ')}`;
    return pool.query({ name: `bare-${events.length}`, text, values: events.flatMap(valuesOf) });
  };
  return { insert, end: () => pool.end() };
}

function valuesOf(event: WireEvent): unknown[] {
  const { id, type, at, station, operator, device, deviceSeq, body } = event;
  const unit = 'unit' in body ? body.unit : null;
  const recordedAt = new Date().toISOString();
  return [id, type, at, at, unit, station, operator, device, deviceSeq, 0, 'enforce', JSON.stringify(body), recordedAt, 'token']; // biome-ignore format: one row
}
