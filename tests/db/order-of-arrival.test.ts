import { describe, expect, it } from 'vitest';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import type { WireEvent } from '@/tests/reference/model/wire-types';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 100);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 8);

/**
 * What the record says when all has come. Left out is what may depend on the order: the server's judgements with their
 * holds, who was merely mentioned, and how far a search must widen.
 */
const RECORD = {
  unit: 'select * from read.unit where last_event is not null or outermost is not null order by unit',
  item: 'select * from read.item order by item',
  mount: 'select * from read.mount order by event',
  unmount: 'select * from read.unmount order by event',
  pass: 'select * from read.pass order by event',
  draw: 'select * from read.direct_draw order by event, ordinal',
  label_print: 'select * from read.label_print order by event',
  removal: 'select * from read.removal order by event',
  salvage: 'select * from read.salvage order by event',
  joining: 'select * from read.joining order by event',
  separation: 'select * from read.separation order by event',
  container: `select * from read.container
    where inside is not null or own_shipment is not null or shipment is not null order by container`,
  hold: 'select * from read.hold where not is_automatic order by hold',
  device: 'select device, received from read.device order by device',
  retirement: 'select * from read.device_retirement order by event',
};

async function recordAfter(
  plant: unknown,
  requests: readonly (readonly WireEvent[])[],
): Promise<Record<string, unknown[]>> {
  const fresh = await openFreshDatabase();
  try {
    await putPlant(plant, 'test');
    for (const request of requests) await recordHistory(request, 1000);
    const record: Record<string, unknown[]> = {};
    for (const [table, statement] of Object.entries(RECORD))
      record[table] = (await database().pool.query(statement)).rows;
    return record;
  } finally {
    await closeDatabase();
    await fresh.drop();
  }
}

describe('the order of arrival, the batching and the repetition of events do not matter', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`to the record of the history with seed ${seed}`, async () => {
      const { plant, events: unnumbered } = randomHistory(seed);
      const events = unnumbered.map((event, index) => ({
        ...event,
        device: `tab-${index % 3}`,
        deviceSeq: Math.floor(index / 3) + 1,
      }));
      const inOrder = [...events].sort((a, b) => (a.at < b.at ? -1 : 1));
      const expected = await recordAfter(plant, [inOrder]);
      expect(expected.unit?.length).toBeGreaterThan(0);
      expect(expected.mount?.length).toBeGreaterThan(0);
      const turned = shuffle(seed, events);
      expect(await recordAfter(plant, batches(seed, turned, { repeats: 0.3 }))).toEqual(expected);
      const single = shuffle(seed + 1, events).map((event) => [event]);
      expect(await recordAfter(plant, single)).toEqual(expected);
    });
});
