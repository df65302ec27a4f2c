import { describe, expect, it } from 'vitest';
import { rebuild } from '@/lib/data/rebuild';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { randomFrom } from '@/tests/reference/model/random';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import type { PlantFile } from '@/tests/reference/model/wire-types';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';
import { recordHistory } from '@/tests/support/record-history';

/** The same plant with other operations, attempts, samples and slots. */
function changed(seed: number, plant: PlantFile): PlantFile {
  const random = randomFrom(seed);
  const operations = plant.stations.map(({ operation }) => operation);
  return {
    ...plant,
    stations: plant.stations.map((station) => ({ ...station, operation: random.pick(operations) })),
    products: plant.products.map((product) => ({
      ...product,
      route: product.route.map(({ step, operation }) => ({
        step,
        operation,
        attempts: random.int(1, 4),
        ...(random.chance(0.4) ? { sample: 0.5 } : {}),
      })),
      bom: random.some(product.bom, product.bom.length - 1),
    })),
  };
}

describe('a plant file that changes in the middle', () => {
  for (const seed of [2, 13, 31, 232])
    it(`leaves the tables as a rebuild makes them; seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      const half = Math.floor(events.length / 2);
      const turned = shuffle(seed, events);
      await putPlant(plant, 'test');
      for (const request of batches(seed, turned.slice(0, half))) await recordHistory(request);
      expect(await putPlant(changed(seed, plant), 'test')).toMatchObject({ ok: true });
      for (const request of batches(seed, turned.slice(half))) await recordHistory(request);
      const before = await dumpReadTables(database().pool);
      await rebuild(fresh.ownerUrl, () => undefined);
      expect(await dumpReadTables(database().pool)).toEqual(before);
      await closeDatabase();
      await fresh.drop();
    });

  it('gives a held unit its attempts back, or takes them', async () => {
    const fresh = await openFreshDatabase();
    const { check, mustSend, through, say, test, product } = await openFloor();
    await mustSend(...through('W1').slice(0, 3), say.failed('W1', test), say.failed('W1', test));
    const route = (attempts: number) => [
      { step: 30, operation: 'test', attempts },
      { step: 10, operation: 'print' },
      { step: 20, operation: 'place' },
    ];
    const attemptsAre = (attempts: number) =>
      putPlant({ products: [{ number: product, revision: 'C', route: route(attempts) }] }, 'test');
    expect(await check('W1', test)).toEqual(['on_hold']);
    await attemptsAre(3);
    expect(await check('W1', test)).toEqual([]);
    // Now either fail is one too many.
    await attemptsAre(1);
    expect(await check('W1', test)).toEqual(['on_hold', 'on_hold']);
    await closeDatabase();
    await fresh.drop();
  });
});
