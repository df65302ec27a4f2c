import { describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { isPicked } from '@/lib/domain/units/sample';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { comparableRecord } from '@/tests/reference/model/comparable-record';
import { questionsAbout, splitFilters } from '@/tests/reference/model/questions';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 1);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 24);

describe('answers on PostgreSQL equal those of the independent model', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      const model = new ReferenceModel(plant, {
        picked: (unit, number, revision, step) => {
          const product = plant.products.find((row) => row.number === number && row.revision === revision);
          const owed = product?.route.find((row) => row.step === step);
          return owed !== undefined && isPicked(unit, { number, revision }, owed);
        },
      });
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      for (const batch of batches(seed, shuffle(seed, events), { repeats: 5 })) {
        const results = await recordHistory(batch, 1000);
        for (const result of results) expect(['recorded', 'already_recorded']).toContain(result.outcome);
      }
      for (const event of events) model.record(event);

      let unitCount = 0;
      for (const question of questionsAbout(events, seed)) {
        const answer = await whereUsed(whereUsedQuestionSchema.parse({ ...question, limit: 5000 }));
        const expected = model.whereUsed(splitFilters(question));
        // The model does not say why a unit is only possible; the answer always does.
        const units = answer.units.map(({ because, ...used }) => {
          expect((because ?? []).length > 0, used.unit).toBe(used.certainty === 'possible');
          return used;
        });
        expect({ question, counts: answer.counts, units }).toEqual({ question, ...expected });
        unitCount += answer.units.length;
      }
      expect(unitCount).toBeGreaterThan(0);

      const units = new Set(events.flatMap(({ body }) => ('unit' in body ? [body.unit] : [])));
      for (const unit of units) {
        for (const at of [undefined, events[(seed * 31) % events.length]?.at]) {
          const record = await asBuilt(unit, at);
          const expected = comparableRecord(model.asBuilt(unit, at));
          if (record === null) expect(expected.events).toEqual([]);
          else expect(comparableRecord(record)).toEqual(expected);
        }
      }
      await closeDatabase();
      await fresh.drop();
    });
});
