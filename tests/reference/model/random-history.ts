import { type Random, randomFrom } from '@/tests/reference/model/random';
import { randomUuidV7 } from '@/tests/reference/model/random-clock';
import {
  mount,
  process,
  receive,
  retire,
  splice,
  start,
  unmount,
} from '@/tests/reference/model/random-floor-actions';
import { randomPlant } from '@/tests/reference/model/random-plant';
import { install, join, remove, salvage, separate } from '@/tests/reference/model/random-repair-actions';
import { randomScene, type Scene, stamp } from '@/tests/reference/model/random-scene';
import {
  hold,
  nest,
  pack,
  release,
  returned,
  scrap,
  ship,
  unnest,
  unpack,
} from '@/tests/reference/model/random-yard-actions';
import type { PlantFile, WireEvent } from '@/tests/reference/model/wire-types';

/** A plant and what happened there; every event says `gate: 'record'`. */
export type RandomHistory = { plant: PlantFile; events: WireEvent[] };

const WEIGHTED: readonly [number, (scene: Scene) => WireEvent[]][] = [
  [30, process],
  [14, mount],
  [7, unmount],
  [4, splice],
  [4, (scene) => start(scene)],
  [2, (scene) => receive(scene)],
  [1, retire],
  [9, remove],
  [4, install],
  [5, salvage],
  [8, join],
  [5, separate],
  [7, pack],
  [3, unpack],
  [4, nest],
  [2, unnest],
  [3, ship],
  [2, returned],
  [1, scrap],
  [2, hold],
  [1, release],
];
const ACTIONS = WEIGHTED.flatMap(([weight, action]) => Array.from({ length: weight }, () => action));

/**
 * 20 to 200 events (or `eventCount`) made from the seed alone, listed roughly as they happened. With
 * `samples: false` no route step is sampled, for callers that cannot say which units are picked.
 */
export function randomHistory(
  seed: number,
  options: { eventCount?: number; samples?: boolean } = {},
): RandomHistory {
  const random = randomFrom(seed);
  const plant = randomPlant(random, { samples: options.samples ?? true });
  const eventCount = options.eventCount ?? random.int(20, 200);
  const scene = randomScene(random, plant, random.int(6, 40));
  const voidCount = random.chance(0.8) ? Math.ceil((eventCount * random.int(1, 12)) / 100) : 0;
  const happened = random.some(opening(scene), Math.ceil(eventCount * 0.4));
  while (happened.length < eventCount - voidCount) {
    scene.tick = Math.floor((happened.length / eventCount) * scene.ticks);
    happened.push(...random.pick(ACTIONS)(scene));
  }
  const events = happened.slice(0, eventCount - voidCount);
  while (events.length < eventCount) events.push(randomVoid(scene, events));
  return { plant, events };
}

/** What stands at the beginning of most shifts: units, items known and slots filled, as far as it fits. */
function opening(scene: Scene): WireEvent[] {
  const { random, plant } = scene;
  const items = scene.items.filter(() => random.chance(0.85)).flatMap((item) => receive(scene, item));
  const units = scene.units.filter(() => random.chance(0.7)).flatMap((unit) => start(scene, unit));
  const slots = plant.stations.flatMap(({ code, slots }) =>
    slots.map(({ name, holds }) => ({ station: code, slot: name, holds })),
  );
  const mounts = slots.filter(() => random.chance(0.75)).flatMap((slot) => mount(scene, slot));
  return [...mounts, ...items, ...units];
}

/** Names any event that there is, a void included, or rarely one that never came. */
function randomVoid(scene: Scene, events: readonly WireEvent[]): WireEvent {
  const { random } = scene;
  scene.tick = random.int(0, scene.ticks);
  const event = random.chance(0.95) ? random.pick(events).id : randomUuidV7(random);
  return { ...stamp(scene), type: 'event.voided', body: { event, reason: 'scanned by mistake' } };
}

/** The same events in another order. */
export function shuffle(seed: number, events: readonly WireEvent[]): WireEvent[] {
  return randomFrom(seed).some(events, events.length);
}

/** The events in their order, cut into requests of 1 to `sizeMax`; some come twice when asked for. */
export function batches(
  seed: number,
  events: readonly WireEvent[],
  options: { sizeMax?: number; repeats?: number } = {},
): WireEvent[][] {
  const random: Random = randomFrom(seed);
  const requests: WireEvent[][] = [];
  for (let start = 0; start < events.length; ) {
    const request = events.slice(start, start + random.int(1, options.sizeMax ?? 40));
    start += request.length;
    const sent = events.slice(0, start).filter(() => random.chance(options.repeats ?? 0));
    requests.push([...request, ...sent]);
  }
  return requests;
}
