import { POSITIONS } from '@/tests/reference/model/random-plant';
import { remembered, type Scene, stamp } from '@/tests/reference/model/random-scene';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** Longer salvage chains carry the same draw by so many ways that answers drown in them. */
const SALVAGES_MAX = 6;

function randomSupply(scene: Scene): { unit: string; positions: string[] } {
  const { random } = scene;
  const { unit, positions } = remembered(scene, scene.supplied, () => ({
    unit: random.pick(scene.units),
    positions: [random.pick(POSITIONS)],
  }));
  return { unit, positions: positions.length > 0 ? positions : [random.pick(POSITIONS)] };
}

/** A part leaves one position, or the parts of one draw leave all of theirs. */
export function remove(scene: Scene): WireEvent[] {
  const { random } = scene;
  const { unit, positions } = randomSupply(scene);
  const removed = random.chance(0.6) ? positions : [random.pick(positions)];
  return removed.map((position) => ({
    ...stamp(scene, 1),
    type: 'part.removed',
    body: { unit, position, ...(random.chance(0.3) ? { reason: 'cracked' } : {}) },
  }));
}

/** A new part goes into a position. */
export function install(scene: Scene): WireEvent[] {
  const { random } = scene;
  const unit = random.pick(scene.units);
  const position = random.pick(POSITIONS);
  const item = random.chance(0.95) ? random.pick(scene.items).code : 'never-received';
  scene.supplied.push({ unit, positions: [position] });
  return [{ ...stamp(scene), type: 'part.installed', body: { unit, position, item } }];
}

/** A part goes from one unit into another, usually removed first and often handed on. */
export function salvage(scene: Scene): WireEvent[] {
  const { random } = scene;
  if (scene.salvages >= SALVAGES_MAX) return install(scene);
  const supply = randomSupply(scene);
  const from = random.pick(supply.positions);
  const [second = 'S-2', third = 'S-3'] = random.some(scene.units, 2);
  const position = random.chance(0.5) ? from : random.pick(POSITIONS);
  const events = handOver(scene, supply.unit, from, second, position);
  return random.chance(0.4)
    ? [...events, ...handOver(scene, second, position, third, random.pick(POSITIONS))]
    : events;
}

function handOver(
  scene: Scene,
  fromUnit: string,
  fromPosition: string,
  unit: string,
  position: string,
): WireEvent[] {
  scene.salvages += 1;
  scene.supplied.push({ unit, positions: [position] });
  const removed: WireEvent = {
    ...stamp(scene, 1),
    type: 'part.removed',
    body: { unit: fromUnit, position: fromPosition },
  };
  const installed: WireEvent = {
    ...stamp(scene, 2),
    type: 'part.installed',
    body: { unit, position, fromUnit, fromPosition },
  };
  return scene.random.chance(0.75) ? [removed, installed] : [installed];
}

/** A unit goes into another: usually one of the next tier, rarely any, so that rings can close. */
export function join(scene: Scene): WireEvent[] {
  const { random, tiers } = scene;
  const tier = random.int(0, tiers.length - 2);
  const inner = tiers[tier] ?? scene.units;
  const outer = tiers[tier + 1] ?? scene.units;
  const unit = random.pick(inner);
  const others = scene.units.filter((other) => other !== unit);
  const into = random.pick(random.chance(0.95) ? outer : others);
  scene.joined.push({ unit, into });
  return [{ ...stamp(scene), type: 'unit.joined', body: { unit, into, position: 'A1' } }];
}

/** A unit comes out again, or is said to come out of where it never was. */
export function separate(scene: Scene): WireEvent[] {
  const { random } = scene;
  const { unit, into } = remembered(scene, scene.joined, () => {
    const [inner = 'S-1', outer = 'M-1'] = random.some(scene.units, 2);
    return { unit: inner, into: outer };
  });
  return [{ ...stamp(scene), type: 'unit.separated', body: { unit, from: into } }];
}
