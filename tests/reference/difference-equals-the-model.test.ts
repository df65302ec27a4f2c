import { describe, expect, it } from 'vitest';
import { differenceQuestionSchema } from '@/lib/domain/genealogy/question';
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
      const second = Math.floor((arriving.length * 3) / 4);
      await recordHistory(arriving.slice(0, cut), 1000);
      const since = await momentAfterAll();
      await recordHistory(arriving.slice(cut, second), 1000);
      const until = await momentAfterAll();
      await recordHistory(arriving.slice(second), 1000);

      const items = [
        ...new Set(
          events.flatMap(({ body }) => ('item' in body && body.item !== undefined ? [body.item] : [])),
        ),
      ];
      const at = events[(seed * 31) % events.length]?.at ?? '';
      let changeCount = 0;
      for (const item of items) {
        const standingsAfter = (count: number, at?: string) => {
          const model = new ReferenceModel(plant);
          for (const event of arriving.slice(0, count)) model.record(event);
          return new Map(
            model
              .whereUsed({ item }, at)
              .units.map(({ unit, certainty, relation }) => [unit, `${certainty} ${relation}`]),
          );
        };
        for (const [end, moments] of [
          [arriving.length, { since, at: undefined }],
          [second, { since, until, at: undefined }],
          [second, { since, until, at }],
        ] as const) {
          const [before, after] = [standingsAfter(cut, moments.at), standingsAfter(end, moments.at)];
          const compared = await answerSince(differenceQuestionSchema.parse({ item, ...moments }));
          const changes = compared.ok ? compared.difference.changes : [];
          expect(compared.ok).toBe(true);
          const expected = [...new Set([...before.keys(), ...after.keys()])].filter(
            (unit) => before.get(unit) !== after.get(unit),
          );
          expect(changes.map(({ unit }) => unit)).toEqual(expected.sort());
          for (const change of changes) {
            const tell = (standing: typeof change.after) =>
              standing === null ? undefined : `${standing.certainty} ${standing.relation}`;
            expect(tell(change.before)).toBe(before.get(change.unit));
            expect(tell(change.after)).toBe(after.get(change.unit));
            // The event that is named gave the unit its standing.
            const cause = 'event' in change.by ? change.by.event : null;
            const index = arriving.findIndex(({ id }) => id.toLowerCase() === cause);
            expect({ item, change, index: index >= cut && index < end }).toMatchObject({ index: true });
            expect(standingsAfter(index + 1, moments.at).get(change.unit)).toBe(after.get(change.unit));
            expect(standingsAfter(index, moments.at).get(change.unit)).not.toBe(after.get(change.unit));
            changeCount += 1;
          }
        }
      }
      expect(changeCount).toBeGreaterThan(0);
      await closeDatabase();
      await fresh.drop();
    });
});

/** A moment by which everything recorded so far had arrived, and nothing that is recorded later. */
async function momentAfterAll(): Promise<string> {
  const { rows } = await database().pool.query('select clock_timestamp() as now');
  const moment = new Date(Math.ceil(Number(rows[0].now) / 1000)).toISOString();
  while (Date.now() <= Date.parse(moment)) await new Promise((resolve) => setTimeout(resolve, 1));
  return moment;
}
