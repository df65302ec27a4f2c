import type { Random } from '@/tests/reference/model/random';
import {
  randomDoubtMs,
  randomInstantUs,
  randomSpanUs,
  randomTimeText,
  randomUuidV7,
} from '@/tests/reference/model/random-clock';
import { BADGES } from '@/tests/reference/model/random-plant';
import type { PlantFile } from '@/tests/reference/model/wire-types';

/** An item that histories may receive; what is received of it may differ from this. */
export type SceneItem = { code: string; kind: string };

/**
 * What the actions of one history share: the plant, the codes in play, and a light memory of what was done
 * last, so that undoing something usually undoes what happened.
 */
export type Scene = {
  random: Random;
  plant: PlantFile;
  tick: number;
  ticks: number;
  items: SceneItem[];
  tiers: string[][];
  units: string[];
  containers: string[];
  mounted: { station: string; slot: string; item: string }[];
  supplied: { unit: string; positions: string[] }[];
  joined: { unit: string; into: string }[];
  packed: { unit: string; container: string }[];
  nested: { container: string; into: string }[];
  holds: string[];
  salvages: number;
};

/** Lots of items, which board lots share now and then. */
export const LOTS = ['LT-1', 'LT-2', 'LT-3'];

/** An empty scene; units come in four tiers, each to be joined into the next. */
export function randomScene(random: Random, plant: PlantFile, ticks: number): Scene {
  const tiers = [['S-1', 'S-2', 'S-3'], ['M-1', 'M-2', 'm-2'], ['T-1', 'T-2'], ['X-1']];
  if (random.chance(0.3)) tiers[0]?.push('Ａ-1', '😀-1');
  return {
    random,
    plant,
    tick: 0,
    ticks,
    items: randomItems(random),
    tiers,
    units: tiers.flat(),
    containers: ['CT-1', 'CT-2', 'CT-3', 'PL-1', 'PL-2'],
    mounted: [],
    supplied: [],
    joined: [],
    packed: [],
    nested: [],
    holds: [],
    salvages: 0,
  };
}

function randomItems(random: Random): SceneItem[] {
  const kinds = { reel: 5, lot: 2, stencil: 2, profile: 1, paste: 1, fixture: 1 };
  return Object.entries(kinds).flatMap(([kind, count]) =>
    Array.from({ length: random.int(1, count) }, (_, index) => ({ code: `${kind}-${index + 1}`, kind })),
  );
}

/** The envelope of the next event: a time near the scene's tick (or ticks later), some doubt and operator. */
export function stamp(scene: Scene, laterTicks = 0) {
  return stampAt(scene, randomInstantUs(scene.random, scene.tick + laterTicks, scene.ticks));
}

/** The envelope of a pass: a stamp and the start of its span, which is never after its end. */
export function spanStamp(scene: Scene) {
  const { random } = scene;
  const endUs = randomInstantUs(random, scene.tick, scene.ticks);
  const startUs = Math.max(0, endUs - randomSpanUs(random));
  const startedAt = random.chance(0.4) ? { startedAt: randomTimeText(random, startUs) } : {};
  return { envelope: stampAt(scene, endUs), startedAt };
}

function stampAt({ random }: Scene, instantUs: number) {
  const operator = random.chance(0.6) ? { operator: random.pick([...BADGES, 'op-unknown']) } : {};
  const uncertaintyMs = random.chance(0.35) ? { uncertaintyMs: randomDoubtMs(random) } : {};
  return {
    id: randomUuidV7(random),
    at: randomTimeText(random, instantUs),
    gate: 'record' as const,
    ...operator,
    ...uncertaintyMs,
  };
}

/** A member of what was done before, usually one of the last, or what `otherwise` makes up. */
export function remembered<Memory>(
  { random }: Scene,
  memories: readonly Memory[],
  otherwise: () => Memory,
): Memory {
  if (memories.length === 0 || random.chance(0.15)) return otherwise();
  return random.pick(memories.slice(-6));
}
