import { describe, expect, it } from 'vitest';
import type { EventType, WireEvent } from '@/lib/domain/events/catalogue';
import { type Random, randomFrom } from '@/tests/reference/model/random';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { type Floor, openFloor } from '@/tests/support/gate-floor';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 1);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 6);
const EVENT_COUNT = 220;

/** How a history is: under the gate with late events and voids, or in order with some that are only recorded. */
type Kind = 'all enforced' | 'some recorded';

/**
 * Types whose judgement rests on what was before them only. Recorded events are judged when all that came with them is
 * known, and a serial or a container is known whenever it appears.
 */
const RECORDED: readonly EventType[] = [
  'unit.processed',
  'unit.signed',
  'unit.joined',
  'unit.separated',
  'part.removed',
  'part.installed',
  'unit.packed',
  'unit.returned',
  'item.mounted',
  'item.unmounted',
];

/** Events about few things, so that they meet often. */
function randomEvents(random: Random, floor: Floor, kind: Kind): WireEvent[] {
  const { say, print, place, test, rework, reel, lot } = floor;
  const units = ['W1', 'W2', 'W3', 'P1', 'P2'];
  const unit = () => random.pick(units);
  const box = () => random.pick(['CT1', 'CT2', 'PL1']);
  const ids: string[] = [];
  const holds: string[] = [];
  const actions: [number, () => WireEvent][] = [
    [6, () => random.pick([floor.start, floor.start, floor.startInner])(unit())],
    [14, () => say.passed(unit(), random.pick([print, place, test, test]))],
    [3, () => say.failed(unit(), random.pick([print, test, test, rework]))],
    [5, () => say.signed(unit())],
    [3, () => say.joined(unit(), unit())],
    [2, () => say.separated(unit(), unit())],
    [1, () => say.removed(unit(), 'C1')],
    [1, () => say.installed({ unit: unit(), position: 'C1', item: reel })],
    [1, () => say.installed({ unit: unit(), position: 'C1', fromUnit: unit(), fromPosition: 'C1' })],
    [6, () => say.packed(unit(), box())],
    [2, () => say.unpacked(unit(), box())],
    [2, () => say.nested(box(), box())],
    [1, () => say.unnested(box(), box())],
    [1, () => say.shipped(box())],
    [2, () => say.returned(unit())],
    [2, () => say.held('unit', unit())],
    [1, () => say.held('lot', lot)],
    [1, () => say.held('container', box())],
    [5, () => say.released(random.pick(holds))],
    [1, () => say.mounted(reel, place, 'F1')],
    [1, () => say.unmounted(reel, place, 'F1')],
    [kind === 'all enforced' ? 3 : 0, () => say.voided(random.pick(ids))],
  ];
  const weighted = actions.flatMap(([weight, action]) => Array.from({ length: weight }, () => action));
  const first = floor.start('W0');
  ids.push(first.id);
  holds.push(first.id);
  return Array.from({ length: EVENT_COUNT }, () => {
    const event = random.pick(weighted)();
    ids.push(event.id);
    if (event.type === 'hold.placed' || (event.type === 'unit.processed' && event.body.result === 'fail'))
      holds.push(event.id);
    if (!random.chance(0.15)) return event;
    if (kind === 'some recorded') return RECORDED.includes(event.type) ? { ...event, gate: 'record' } : event;
    return { ...event, at: say.minute(random.int(20, 20 + ids.length)) };
  });
}

async function answersTo(
  seed: number,
  kind: Kind,
  cut: (events: WireEvent[]) => WireEvent[][],
): Promise<string[]> {
  const fresh = await openFreshDatabase();
  try {
    const floor = await openFloor();
    const random = randomFrom(seed);
    const answers: string[] = [];
    for (const request of cut(randomEvents(random, floor, kind)))
      answers.push(...(await floor.send(...request)));
    return answers.map((answer) => answer.replaceAll(/-\d+/g, ''));
  } finally {
    await closeDatabase();
    await fresh.drop();
  }
}

function cutRandomly(seed: number) {
  const random = randomFrom(seed);
  return (events: WireEvent[]) => {
    const requests: WireEvent[][] = [];
    for (let start = 0; start < events.length; ) {
      const request = events.slice(start, start + random.int(1, 60));
      requests.push(request);
      start += request.length;
    }
    return requests;
  };
}

describe('the gate answers the same to events in one request, in several, and each alone', () => {
  for (const kind of ['all enforced', 'some recorded'] as const)
    for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
      it(`${kind}, seed ${seed}`, async () => {
        const alone = await answersTo(seed, kind, (events) => events.map((event) => [event]));
        expect(alone.length).toBe(EVENT_COUNT);
        expect(alone.filter((answer) => answer === 'recorded').length).toBeGreaterThan(EVENT_COUNT / 10);
        expect(new Set(alone).size).toBeGreaterThan(8);
        expect(await answersTo(seed, kind, (events) => [events])).toEqual(alone);
        expect(await answersTo(seed, kind, cutRandomly(seed))).toEqual(alone);
      });
});
