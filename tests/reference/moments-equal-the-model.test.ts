import { afterAll, describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { isPicked } from '@/lib/domain/units/sample';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { comparableRecord } from '@/tests/reference/model/comparable-record';
import { questionsAbout, splitFilters } from '@/tests/reference/model/questions';
import { withDoubts } from '@/tests/reference/model/random-doubts';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { momentAfterAll } from '@/tests/support/moment-after-all';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 500);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 3);

/** How many units were compared, and how many of them each kind of doubt made possible in answers about moments. */
const seen = { units: 0, balance: 0, gap: 0 };

afterAll(() => {
  expect(seen.units).toBeGreaterThan(0);
  // Few histories may have none of a kind.
  if (HISTORY_COUNT < 3) return;
  expect(seen.balance).toBeGreaterThan(0);
  expect(seen.gap).toBeGreaterThan(0);
});

describe('an answer about a moment is the answer that the model gives to what had arrived and happened by then', () => {
  for (let index = 0; index < 2 * HISTORY_COUNT; index += 1) {
    const seed = SEED_FIRST + Math.floor(index / 2);
    const isDoubtful = index % 2 === 1;
    it(`history with seed ${seed}${isDoubtful ? ', with counts and devices that owe' : ''}`, async () => {
      const fresh = await openFreshDatabase();
      const plain = randomHistory(seed);
      const { plant, events } = isDoubtful ? withDoubts(seed, plain) : plain;
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      const arriving = shuffle(seed, events);
      const cut = Math.floor((arriving.length * (1 + (seed % 3))) / 4);
      await recordHistory(arriving.slice(0, cut), 1000);
      const knownAt = await momentAfterAll();
      await recordHistory(arriving.slice(cut), 1000);

      const known = new ReferenceModel(plant, { picked: pickedBy(plant) });
      for (const event of arriving.slice(0, cut)) known.record(event);
      const all = new ReferenceModel(plant, { picked: pickedBy(plant) });
      for (const event of events) all.record(event);
      const at = events[(seed * 31) % events.length]?.at ?? '';
      for (const question of questionsAbout(events, seed).filter((_, index) => index % 12 === seed % 12)) {
        for (const [moment, expected] of [
          [{}, all.whereUsed(splitFilters(question))],
          [{ knownAt }, known.whereUsed(splitFilters(question))],
          [{ at }, all.whereUsed(splitFilters(question), at)],
          [{ at, knownAt }, known.whereUsed(splitFilters(question), at)],
        ] as const) {
          const asked = { ...question, ...moment };
          const answer = await whereUsed(whereUsedQuestionSchema.parse({ ...asked, limit: 5000 }));
          const units = answer.units.map(({ because: _, ...used }) => used);
          expect({ asked, counts: answer.counts, units }).toEqual({ asked, ...expected });
          const { owing } = ('knownAt' in moment ? known : all).missing();
          expect(
            answer.owing.map(({ device, missing }) => ({ device, missing: missing.flatMap(numbersIn) })),
          ).toEqual(owing.map(({ device, missing }) => ({ device, missing })));
          seen.units += units.length;
          for (const { because = [] } of Object.keys(moment).length === 0 ? [] : answer.units)
            for (const kind of ['balance', 'gap'] as const) if (because.includes(kind)) seen[kind] += 1;
        }
      }

      const units = [...new Set(events.flatMap(({ body }) => ('unit' in body ? [body.unit] : [])))];
      for (const unit of units.slice(0, 8)) {
        for (const [asked, expected] of [
          [[undefined, undefined], all.asBuilt(unit)],
          [[undefined, knownAt], known.asBuilt(unit)],
          [[at, knownAt], known.asBuilt(unit, at)],
        ] as const) {
          const record = await asBuilt(unit, ...asked);
          if (record === null) expect(expected.events).toEqual([]);
          else expect(comparableRecord(record)).toEqual(comparableRecord(expected));
        }
      }
      await closeDatabase();
      await fresh.drop();
    });
  }
});

function pickedBy(plant: ReturnType<typeof randomHistory>['plant']) {
  return (unit: string, number: string, revision: string, step: number) => {
    const product = plant.products.find((row) => row.number === number && row.revision === revision);
    const owed = product?.route.find((row) => row.step === step);
    return owed !== undefined && isPicked(unit, { number, revision }, owed);
  };
}

function numbersIn([from, to]: readonly [number, number]): number[] {
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}
