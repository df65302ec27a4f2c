import { afterAll, describe, expect, it } from 'vitest';
import { differenceQuestionSchema } from '@/lib/domain/genealogy/question';
import { answerSince } from '@/lib/server/answer-since';
import { putPlant } from '@/lib/server/put-plant';
import { withDoubts } from '@/tests/reference/model/random-doubts';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { momentAfterAll } from '@/tests/support/moment-after-all';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 700);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 3);

/** Types of the events that changed units, where counts and gaps of devices can do it. */
const seen = new Set<string>();

afterAll(() => {
  // Few histories may have none. A count is a rare cause at random: tests/db/doubt-at-moments.test.ts has one.
  if (HISTORY_COUNT < 3) return;
  expect([...seen]).toContain('gap');
});

describe('the difference of an answer since it was given', () => {
  for (let index = 0; index < 2 * HISTORY_COUNT; index += 1) {
    const seed = SEED_FIRST + Math.floor(index / 2);
    const isDoubtful = index % 2 === 1;
    const about = isDoubtful ? `${seed}, with counts and devices that owe` : String(seed);
    it(`names every unit that changed, and the event without which it would not have; seed ${about}`, async () => {
      const fresh = await openFreshDatabase();
      const plain = randomHistory(seed, { eventCount: 80, samples: false });
      const { plant, events } = isDoubtful ? withDoubts(seed, plain) : plain;
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
        const known = new Map<string, ReadonlyMap<string, string>>();
        const standingsAfter = (count: number, at = '') => {
          const standings = known.get(count + at) ?? standingsOf(count, at === '' ? undefined : at);
          known.set(count + at, standings);
          return standings;
        };
        const standingsOf = (count: number, at: string | undefined) => {
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
          expect(compared).toMatchObject({ ok: true, difference: { leavesOut: false } });
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
            if (!isDoubtful || !compared.ok) continue;
            const told = compared.difference.events.find(({ event }) => event.id === cause);
            seen.add(told?.changesOwing === true ? 'gap' : (told?.event.type ?? ''));
          }
        }
      }
      expect(changeCount).toBeGreaterThan(0);
      await closeDatabase();
      await fresh.drop();
    });
  }
});
