import { describe, expect, it } from 'vitest';
import { narrowQuestionSchema } from '@/lib/domain/genealogy/narrow-question';
import { isPicked } from '@/lib/domain/units/sample';
import { narrow } from '@/lib/server/narrow';
import { putPlant } from '@/lib/server/put-plant';
import { narrower, type WireCondition } from '@/tests/reference/model/narrow';
import { type Random, randomFrom } from '@/tests/reference/model/random';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import type { WireEvent } from '@/tests/reference/model/wire-types';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 1);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 16);
const QUESTION_COUNT = 40;

/** Random histories know no orders and panels; every third unit is given them by its place in the list. */
function withOrders(events: readonly WireEvent[]): WireEvent[] {
  return events.map((event, index) =>
    event.type === 'unit.started' && index % 3 !== 0
      ? { ...event, body: { ...event.body, order: `WO-${index % 4}`, panel: `PN-${index % 5}` } }
      : event,
  );
}

/** Values that the events hold under a name, wherever it stands, and one that none of them does. */
function valuesOf(events: readonly WireEvent[], name: string): string[] {
  const values = new Set<string>(['NEVER']);
  const look = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    for (const [key, value] of Object.entries(part)) {
      if (key === name && typeof value === 'string') values.add(value);
      look(value);
    }
  };
  for (const event of events) look(event);
  return [...values];
}

/** Makes conditions of every kind about what a history mentions. */
function conditionMaker(random: Random, events: readonly WireEvent[], operations: string[]) {
  const known = new Map<string, string[]>();
  const one = (name: string) => {
    const values = known.get(name) ?? valuesOf(events, name);
    known.set(name, values);
    return { [name]: random.pick(values) };
  };
  const sometimes = (name: string) => (random.chance(0.25) ? one(name) : {});
  const time = () => ({
    ...(random.chance(0.2) ? { from: random.pick(events).at } : {}),
    ...(random.chance(0.2) ? { to: random.pick(events).at } : {}),
  });
  const operation = () => ({ operation: random.pick(operations) });
  const makers = [
    () => ({
      kind: 'used',
      ...one(random.pick(['item', 'item', 'lot', 'part'])),
      ...sometimes('station'),
      ...time(),
    }),
    () => ({
      kind: 'processed',
      ...one('station'),
      ...time(),
      ...(random.chance(0.3) ? { result: 'fail' } : {}),
    }),
    () => ({
      kind: 'processed',
      ...operation(),
      ...sometimes('operator'),
      result: random.pick(['pass', 'fail']),
    }),
    () => ({ kind: 'processed', from: random.pick(events).at, ...sometimes('operator') }),
    () => ({ kind: 'defect', code: 'D-1', ...sometimes('position'), ...time() }),
    () => ({ kind: 'defect', ...one('position'), ...(random.chance(0.3) ? operation() : {}) }),
    () => ({ kind: 'repaired', ...one('position'), ...time() }),
    () => ({ kind: 'repaired', change: random.pick(['removed', 'installed']), ...sometimes('position') }),
    () => ({ kind: 'product', ...one('product'), ...sometimes('revision') }),
    () => ({ kind: 'started', ...one(random.pick(['boardLot', 'order', 'panel'])) }),
    () => ({ kind: 'place', place: 'station', ...sometimes('station') }),
    () => ({ kind: 'place', place: random.pick(['stock', 'container', 'shipped', 'returned', 'scrapped']) }),
    () => ({ kind: 'packed', ...one(random.pick(['container', 'shipment', 'customer'])) }),
  ];
  return (must: boolean): WireCondition => ({ must, ...random.pick(makers)() });
}

describe('narrowing on PostgreSQL equals looking at every unit by hand', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events: bare } = randomHistory(seed);
      const events = withOrders(bare);
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      const results = await recordHistory(shuffle(seed, events), 1000);
      expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
      const byHand = narrower(plant, events, (unit, number, revision, step) => {
        const product = plant.products.find((row) => row.number === number && row.revision === revision);
        const owed = product?.route.find((row) => row.step === step);
        return owed !== undefined && isPicked(unit, { number, revision }, owed);
      });

      const random = randomFrom(seed * 31 + 7);
      const operations = [...new Set(plant.stations.map((station) => station.operation)), 'NEVER'];
      const make = conditionMaker(random, events, operations);
      const ask = (conditions: readonly WireCondition[]) =>
        narrow(narrowQuestionSchema.parse({ conditions, limit: 5000 }));
      let looked = 0;
      for (let asked = 0; asked < QUESTION_COUNT; asked += 1) {
        const musts = [true, ...Array.from({ length: random.int(0, 3) }, () => random.chance(0.4))];
        const conditions = random.some(musts, musts.length).map(make);
        const answer = await ask(conditions);
        const expected = byHand(conditions);
        const serials = (certainty: string) =>
          answer.units.filter((unit) => unit.certainty === certainty).map(({ unit }) => unit);
        const told = {
          certain: serials('certain'),
          possible: serials('possible'),
          doubts: Object.fromEntries(
            answer.units.map(({ unit, doubts }) => [unit, doubts.map(({ condition }) => condition)]),
          ),
          conditions: answer.conditions.map(({ condition: _, ...counts }) => counts),
        };
        expect({ asked: conditions, ...told }).toEqual({ asked: conditions, ...expected });
        expect(answer.counts.certain.units).toBe(expected.certain.length);
        expect(answer.counts.possible.units).toBe(expected.possible.length);
        for (const { certainty, doubts } of answer.units) {
          expect(doubts.length > 0).toBe(certainty === 'possible');
          for (const { because } of doubts) expect(because.length).toBeGreaterThan(0);
        }
        const turned = await ask(random.some(conditions, conditions.length));
        expect(turned.units.map(({ unit, certainty }) => [unit, certainty])).toEqual(
          answer.units.map(({ unit, certainty }) => [unit, certainty]),
        );
        looked += answer.units.length;
      }
      expect(looked).toBeGreaterThan(0);
      await closeDatabase();
      await fresh.drop();
    });
});
