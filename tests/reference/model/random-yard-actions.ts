import { remembered, type Scene, stamp } from '@/tests/reference/model/random-scene';
import type { WireEvent } from '@/tests/reference/model/wire-types';

/** A unit goes into a carton. */
export function pack(scene: Scene): WireEvent[] {
  const unit = scene.random.pick(scene.units);
  const container = scene.random.pick(scene.containers);
  scene.packed.push({ unit, container });
  return [{ ...stamp(scene), type: 'unit.packed', body: { unit, container } }];
}

/** A unit comes out of a carton, now and then of another than it went into. */
export function unpack(scene: Scene): WireEvent[] {
  const { random } = scene;
  const body = remembered(scene, scene.packed, () => ({
    unit: random.pick(scene.units),
    container: random.pick(scene.containers),
  }));
  return [{ ...stamp(scene), type: 'unit.unpacked', body: { ...body } }];
}

/** A carton goes onto a pallet; any container may go into any other. */
export function nest(scene: Scene): WireEvent[] {
  const nesting = randomNesting(scene);
  scene.nested.push(nesting);
  return [{ ...stamp(scene), type: 'container.nested', body: { ...nesting } }];
}

/** A carton comes off a pallet. */
export function unnest(scene: Scene): WireEvent[] {
  const { container, into } = remembered(scene, scene.nested, () => randomNesting(scene));
  return [{ ...stamp(scene), type: 'container.unnested', body: { container, from: into } }];
}

function randomNesting({ random, containers }: Scene): { container: string; into: string } {
  const [container = 'CT-1', into = 'PL-1'] = random.some(containers, 2);
  return { container, into };
}

/** A container leaves the site. */
export function ship(scene: Scene): WireEvent[] {
  const { random } = scene;
  const container = random.pick(scene.containers);
  const shipment = `SH-${random.int(1, 4)}`;
  const customer = random.pick(['Northgate Rail', 'Fell Instruments']);
  const destination = random.chance(0.5) ? { destination: 'Northern yard' } : {};
  return [
    {
      ...stamp(scene),
      type: 'container.shipped',
      body: { container, shipment, customer, ...destination },
    },
  ];
}

/** A customer sends a unit back. */
export function returned(scene: Scene): WireEvent[] {
  const unit = scene.random.pick(scene.units);
  return [{ ...stamp(scene), type: 'unit.returned', body: { unit, symptom: 'dead' } }];
}

/** A unit is given up. */
export function scrap(scene: Scene): WireEvent[] {
  const unit = scene.random.pick(scene.units);
  return [{ ...stamp(scene), type: 'unit.scrapped', body: { unit, reason: 'burnt' } }];
}

/** Something is held. */
export function hold(scene: Scene): WireEvent[] {
  const { random } = scene;
  const envelope = stamp(scene);
  scene.holds.push(envelope.id);
  const target = random.pick([
    { kind: 'unit' as const, id: random.pick(scene.units) },
    { kind: 'item' as const, id: random.pick(scene.items).code },
    { kind: 'container' as const, id: random.pick(scene.containers) },
  ]);
  return [{ ...envelope, type: 'hold.placed', body: { target, reason: 'suspect' } }];
}

/** A hold is lifted, when there is one. */
export function release(scene: Scene): WireEvent[] {
  const placed = scene.holds.at(-1);
  if (placed === undefined) return [];
  return [
    {
      ...stamp(scene),
      type: 'hold.released',
      body: { hold: placed, disposition: 'use as is', reason: 'checked' },
    },
  ];
}
