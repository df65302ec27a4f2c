import { describe, expect, it } from 'vitest';
import type { LateEvent } from '@/lib/data/moment/late-event';
import { toLogged } from '@/lib/domain/events/logged-event';
import type { Standing } from '@/lib/domain/genealogy/difference';
import { findCauses } from '@/lib/server/find-causes';
import { eventMaker } from '@/tests/support/event-maker';

const CONTAINS: Standing = { certainty: 'certain', relation: 'contains' };

/** Late work on units, each of which joins the answer with the last of its events; `related`: all depend on each other. */
function scene(units: readonly string[], { related = false } = {}) {
  const make = eventMaker();
  const late = units.map((unit, index): LateEvent => {
    const event = toLogged(make.passed(unit, 'ST-1'));
    return { event, position: index + 1, recordedAtUs: event.atUs, recordedBy: 'test', unit, received: null };
  });
  let played: LateEvent[] = [];
  let answerCount = 0;
  const record = {
    relatedUnits: async () => new Set(related ? units : []),
    play: async (events: readonly LateEvent[]) => void played.push(...events),
    attempt: async (work: () => Promise<boolean>) => {
      const before = [...played];
      const isKept = await work();
      if (!isKept) played = before;
      return isKept;
    },
  };
  const answer = (joins: (event: LateEvent) => boolean) => async () => {
    answerCount += 1;
    return new Map(played.filter(joins).map(({ unit }) => [unit ?? '', CONTAINS]));
  };
  const find = (joins: (event: LateEvent) => boolean) =>
    findCauses(record, { before: new Map(), late, answer: answer(joins) });
  return {
    late,
    find,
    answerCount: () => answerCount,
    playedPositions: () => played.map(({ position }) => position),
  };
}

const unitsOf = (count: number) => Array.from({ length: count }, (_, index) => `U-${index}`);

describe('what changed an answer', () => {
  it('is found among many events by few answers', async () => {
    const { late, find, answerCount, playedPositions } = scene(unitsOf(1000), { related: true });
    const { after, causes } = await find(({ unit }) => unit === 'U-17' || unit === 'U-818');
    expect([...causes]).toEqual([
      ['U-17', { event: late[17]?.event.id }],
      ['U-818', { event: late[818]?.event.id }],
    ]);
    expect([...after.keys()]).toEqual(['U-17', 'U-818']);
    expect(answerCount()).toBeLessThan(30);
    expect(playedPositions()).toEqual(late.map(({ position }) => position));
  });

  it('is told at once where units have nothing to do with each other, by the event of each', async () => {
    const { late, find, answerCount } = scene([...unitsOf(500), ...unitsOf(500)]);
    const { causes } = await find(({ position }) => (position ?? 0) > 500);
    expect(causes.size).toBe(500);
    expect(causes.get('U-3')).toEqual({ event: late[503]?.event.id });
    expect(answerCount()).toBeLessThan(5);
  });

  it('is one of several where telling them apart would be too much work', async () => {
    const { late, find, answerCount, playedPositions } = scene(unitsOf(2000), { related: true });
    const { after, causes } = await find(() => true);
    expect(answerCount()).toBeLessThanOrEqual(201);
    expect(after.size).toBe(2000);
    expect(causes.size).toBe(2000);
    expect(causes.get('U-0')).toEqual({ event: late[0]?.event.id });
    expect(causes.get('U-1999')).toMatchObject({ among: expect.any(Number), to: late[1999]?.event.at });
    expect(playedPositions()).toEqual(late.map(({ position }) => position));
  });

  it('is nothing where nothing arrived', async () => {
    const { find, answerCount } = scene([]);
    expect((await find(() => true)).causes.size).toBe(0);
    expect(answerCount()).toBe(0);
  });
});
