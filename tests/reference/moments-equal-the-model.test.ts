import { describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { isPicked } from '@/lib/domain/units/sample';
import { asBuilt } from '@/lib/server/as-built';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { comparableRecord } from '@/tests/reference/model/comparable-record';
import { questionsAbout, splitFilters } from '@/tests/reference/model/questions';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 500);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 3);

describe('an answer about a moment is the answer that the model gives to what had arrived and happened by then', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      const arriving = shuffle(seed, events);
      const cut = Math.floor((arriving.length * (1 + (seed % 3))) / 4);
      await recordHistory(arriving.slice(0, cut), 1000);
      const { rows } = await database().pool.query('select clock_timestamp() as now');
      const knownAt = new Date(Math.ceil(Number(rows[0].now) / 1000)).toISOString();
      // The next event must arrive in a later millisecond.
      while (Date.now() <= Date.parse(knownAt)) await new Promise((resolve) => setTimeout(resolve, 1));
      await recordHistory(arriving.slice(cut), 1000);

      const known = new ReferenceModel(plant, { picked: pickedBy(plant) });
      for (const event of arriving.slice(0, cut)) known.record(event);
      const all = new ReferenceModel(plant, { picked: pickedBy(plant) });
      for (const event of events) all.record(event);
      const at = events[(seed * 31) % events.length]?.at ?? '';
      let unitCount = 0;
      for (const question of questionsAbout(events, seed).filter((_, index) => index % 12 === seed % 12)) {
        for (const [moment, expected] of [
          [{ knownAt }, known.whereUsed(splitFilters(question))],
          [{ at }, all.whereUsed(splitFilters(question), at)],
          [{ at, knownAt }, known.whereUsed(splitFilters(question), at)],
        ] as const) {
          const asked = { ...question, ...moment };
          const answer = await whereUsed(whereUsedQuestionSchema.parse({ ...asked, limit: 5000 }));
          const units = answer.units.map(({ because: _, ...used }) => used);
          expect({ asked, counts: answer.counts, units }).toEqual({ asked, ...expected });
          unitCount += units.length;
        }
      }
      expect(unitCount).toBeGreaterThan(0);

      const units = [...new Set(events.flatMap(({ body }) => ('unit' in body ? [body.unit] : [])))];
      for (const unit of units.slice(0, 8)) {
        for (const [asked, expected] of [
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
});

function pickedBy(plant: ReturnType<typeof randomHistory>['plant']) {
  return (unit: string, number: string, revision: string, step: number) => {
    const product = plant.products.find((row) => row.number === number && row.revision === revision);
    const owed = product?.route.find((row) => row.step === step);
    return owed !== undefined && isPicked(unit, { number, revision }, owed);
  };
}
