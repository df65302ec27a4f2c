import { PARTS, POSITIONS } from '@/tests/reference/model/random-plant';
import { LOTS, remembered, type Scene, spanStamp, stamp } from '@/tests/reference/model/random-scene';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** A unit begins as some product, now and then as one that the plant does not know. */
export function start(scene: Scene, unit = scene.random.pick(scene.units)): WireEvent[] {
  const { random, plant } = scene;
  const { number, revision } = random.pick(plant.products);
  const known = random.chance(0.95) ? { product: number, revision } : { product: number, revision: 'Z' };
  const boardLots = ['BL-1', 'BL-2', ...LOTS, random.pick(scene.items).code];
  const boardLot = random.chance(0.4) ? { boardLot: random.pick(boardLots) } : {};
  const station = random.chance(0.3) ? { station: random.pick(plant.stations).code } : {};
  return [{ ...stamp(scene), ...station, type: 'unit.started', body: { unit, ...known, ...boardLot } }];
}

/** A unit passes or fails at a station, now and then using things that stand in no slot. */
export function process(scene: Scene): WireEvent[] {
  const { random, plant } = scene;
  const station = random.chance(0.94) ? random.pick(plant.stations).code : 'GHOST';
  const unit = random.pick(scene.units);
  const used = random.chance(0.25) ? randomUsed(scene) : [];
  const lines = plant.products.flatMap(({ bom }) => bom).filter((line) => line.station === station);
  for (const { positions } of [...lines, ...used]) scene.supplied.push({ unit, positions });
  const { envelope, startedAt } = spanStamp(scene);
  const failed = random.chance(0.2);
  const defect = { defects: [{ code: 'D-1', position: random.pick(POSITIONS) }] };
  return [
    {
      ...envelope,
      station,
      type: 'unit.processed',
      body: {
        unit,
        result: failed ? 'fail' : 'pass',
        ...startedAt,
        ...(used.length > 0 ? { used: used.map(withoutEmptyPositions) } : {}),
        ...(failed && random.chance(0.5) ? defect : {}),
      },
    },
  ];
}

function randomUsed({ random, items }: Scene) {
  const codes = [...items.map(({ code }) => code), 'never-received'];
  return random.some(codes, random.int(1, 2)).map((item) => ({
    item,
    positions: random.chance(0.7) ? random.some(POSITIONS, random.int(1, 3)) : [],
    ...(random.chance(0.5) ? { quantity: random.int(1, 9) } : {}),
  }));
}

function withoutEmptyPositions({ positions, ...use }: { item: string; positions: string[] }) {
  return positions.length > 0 ? { ...use, positions } : use;
}

/** An item goes into a slot: usually one of its kind, now and then one that the plant does not declare. */
export function mount(scene: Scene, where = randomSlot(scene)): WireEvent[] {
  const { random } = scene;
  const { station, slot, holds } = where;
  const fitting = scene.items.filter(({ kind }) => kind === holds);
  const item = random.pick(fitting.length > 0 && random.chance(0.75) ? fitting : scene.items).code;
  const code = random.chance(0.05) ? 'never-received' : item;
  scene.mounted.push({ station, slot, item: code });
  return [{ ...stamp(scene), station, type: 'item.mounted', body: { item: code, slot } }];
}

function randomSlot({ random, plant }: Scene): { station: string; slot: string; holds: string } {
  const station = random.pick(plant.stations);
  const { name, holds } = random.pick(station.slots);
  if (random.chance(0.06)) return { station: station.code, slot: 'F-undeclared', holds: 'reel' };
  if (random.chance(0.05)) return { station: 'GHOST', slot: 'F1', holds: 'stencil' };
  return { station: station.code, slot: name, holds };
}

/** The end of what was put into a slot is spliced to another item, or of something that never was there. */
export function splice(scene: Scene): WireEvent[] {
  const { random } = scene;
  const { station, slot, item } = remembered(scene, scene.mounted, () => ({
    ...randomSlot(scene),
    item: random.pick(scene.items).code,
  }));
  const others = scene.items.filter(({ code }) => code !== item);
  const to = random.pick(others).code;
  const greyUnits = random.chance(0.75) ? { greyUnits: random.int(0, 4) } : {};
  scene.mounted.push({ station, slot, item: to });
  return [{ ...stamp(scene), station, type: 'item.spliced', body: { from: item, to, slot, ...greyUnits } }];
}

/** An item leaves its slot, or is said to leave one where it never was. */
export function unmount(scene: Scene): WireEvent[] {
  const { station, slot, item } = remembered(scene, scene.mounted, () => ({
    ...randomSlot(scene),
    item: scene.random.pick(scene.items).code,
  }));
  return [{ ...stamp(scene), station, type: 'item.unmounted', body: { item, slot } }];
}

/** An item is received, usually as what it is; later receipts change its facts. */
export function receive(scene: Scene, item = scene.random.pick(scene.items)): WireEvent[] {
  const { random } = scene;
  const kind = random.chance(0.92) ? item.kind : random.pick(scene.items).kind;
  const part = random.chance(0.85) ? { part: random.pick(PARTS) } : {};
  const lot = random.chance(0.75) ? { lot: random.pick(LOTS) } : {};
  return [{ ...stamp(scene), type: 'item.received', body: { item: item.code, kind, ...part, ...lot } }];
}

/** An item is retired, which ends no draw. */
export function retire(scene: Scene): WireEvent[] {
  const item = scene.random.pick(scene.items).code;
  return [{ ...stamp(scene), type: 'item.retired', body: { item, reason: 'worn' } }];
}
