import { describe, expect, it } from 'vitest';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import type { WireEvent } from '@/tests/reference/model/wire-types';

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);
const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

function named(events: readonly WireEvent[], ...keys: string[]): string[] {
  const values = events.flatMap(({ body }) => Object.entries(body).filter(([key]) => keys.includes(key)));
  return [...new Set(values.map(([, value]) => String(value)))];
}

/** Every answer that the history can be asked for. */
function answersOf(seed: number, events: readonly WireEvent[]) {
  const { plant } = randomHistory(seed);
  const model = new ReferenceModel(plant);
  for (const event of events) model.record(event);
  const things = named(events, 'item', 'boardLot').map((item) => model.whereUsed({ item }));
  const lots = named(events, 'lot', 'boardLot').map((lot) => model.whereUsed({ lot }));
  const units = named(events, 'unit').map((unit) => model.asBuilt(unit));
  return { things, lots, units };
}

describe('Random histories', () => {
  it('are the same for the same seed, and 20 to 200 valid events for every seed', () => {
    for (const seed of SEEDS) {
      const { events } = randomHistory(seed);
      expect(randomHistory(seed).events).toEqual(events);
      expect(events.length, `seed ${seed}`).toBeGreaterThanOrEqual(20);
      expect(events.length, `seed ${seed}`).toBeLessThanOrEqual(200);
      expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
      for (const event of events) expect(event.id).toMatch(UUID_V7);
    }
  });

  it('meet every relation, certainty and place, salvage chains, depth 3, and instants shared by events', () => {
    const met = new Set<string>();
    for (const seed of SEEDS) {
      const { events } = randomHistory(seed);
      if (new Set(events.map(({ at }) => Date.parse(at))).size < events.length) met.add('tie');
      for (const { type } of events) met.add(type);
      const { things, units } = answersOf(seed, events);
      for (const row of things.flatMap((answer) => answer.units)) {
        met
          .add(row.relation)
          .add(row.certainty)
          .add(`place ${row.place?.kind}`)
          .add(`depth ${row.through.length}`);
      }
      for (const draw of units.flatMap(({ draws }) => draws)) met.add(`via ${draw.via.length}`);
    }
    const relations = ['contains', 'formerly', 'touched', 'certain', 'possible'];
    const places = ['station', 'stock', 'container', 'shipped', 'returned', 'scrapped'];
    const depths = ['depth 0', 'depth 1', 'depth 2', 'depth 3', 'via 0', 'via 1', 'via 2', 'tie'];
    const types = ['unit.separated', 'part.removed', 'container.unnested', 'event.voided', 'hold.released'];
    const expected = [...relations, ...places.map((kind) => `place ${kind}`), ...depths, ...types];
    expect(expected.filter((what) => !met.has(what))).toEqual([]);
  });

  it('give equal answers in any order of arrival and with any repetition', () => {
    let drawCount = 0;
    for (const seed of SEEDS) {
      const { events } = randomHistory(seed);
      const expected = answersOf(seed, events);
      drawCount += expected.units.flatMap(({ draws }) => draws).length;
      for (const order of [1, 2]) {
        const arrived = batches(order, shuffle(seed * 10 + order, events), { repeats: 0.1 }).flat();
        const actual = answersOf(seed, arrived);
        expect(sorted(actual), `seed ${seed}`).toEqual(sorted(expected));
      }
    }
    expect(drawCount).toBeGreaterThan(1000);
  });
});

/** Questions are asked in order of arrival, so their answers are compared in an order of their own. */
function sorted(answers: ReturnType<typeof answersOf>): string[] {
  return Object.values(answers).flatMap((list) => list.map((answer) => JSON.stringify(answer)).sort());
}
