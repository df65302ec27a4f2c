import { describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { answerSince } from '@/lib/server/answer-since';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 700);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 3);

describe('the difference of an answer since it was given', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`names every unit that changed, and the event without which it would not have; seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed, { eventCount: 80, samples: false });
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      const arriving = shuffle(seed, events);
      const cut = Math.floor(arriving.length / 2);
      await recordHistory(arriving.slice(0, cut), 1000);
      const { rows } = await database().pool.query('select clock_timestamp() as now');
      const since = new Date(Math.ceil(Number(rows[0].now) / 1000)).toISOString();
      while (Date.now() <= Date.parse(since)) await new Promise((resolve) => setTimeout(resolve, 1));
      await recordHistory(arriving.slice(cut), 1000);

      const items = [
        ...new Set(
          events.flatMap(({ body }) => ('item' in body && body.item !== undefined ? [body.item] : [])),
        ),
      ];
      let changeCount = 0;
      for (const item of items) {
        const standingsAfter = (count: number) => {
          const model = new ReferenceModel(plant);
          for (const event of arriving.slice(0, count)) model.record(event);
          return new Map(
            model
              .whereUsed({ item })
              .units.map(({ unit, certainty, relation }) => [unit, `${certainty} ${relation}`]),
          );
        };
        const [before, after] = [standingsAfter(cut), standingsAfter(arriving.length)];
        const { changes } = await answerSince(whereUsedQuestionSchema.parse({ item }), since);
        const expected = [...new Set([...before.keys(), ...after.keys()])].filter(
          (unit) => before.get(unit) !== after.get(unit),
        );
        expect(changes.map(({ unit }) => unit)).toEqual(expected.sort());
        for (const change of changes) {
          const tell = (standing: typeof change.after) =>
            standing === null ? undefined : `${standing.certainty} ${standing.relation}`;
          expect(tell(change.before)).toBe(before.get(change.unit));
          expect(tell(change.after)).toBe(after.get(change.unit));
          // The last event that changed the unit's standing is the one that is named.
          const index = arriving.findIndex(({ id }) => id.toLowerCase() === change.by?.id);
          expect({ item, change, index: index >= cut }).toMatchObject({ index: true });
          expect(standingsAfter(index + 1).get(change.unit)).toBe(after.get(change.unit));
          expect(standingsAfter(index).get(change.unit)).not.toBe(after.get(change.unit));
          changeCount += 1;
        }
      }
      expect(changeCount).toBeGreaterThan(0);
      await closeDatabase();
      await fresh.drop();
    });
});
