import type { Known } from '@/lib/domain/gate/known';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { notReadyToLeave } from '@/lib/domain/gate/unit-rules';

/** A container is known once a unit or a container went into it. */
export function unknownContainer(known: Known, container: string): Refusal[] {
  return known.container(container) === null ? [{ code: 'unknown_container', container }] : [];
}

/** What is shipped is not packed any more. */
export function containerShipped(known: Known, container: string): Refusal[] {
  const shipment = known.container(container)?.shipment ?? null;
  return shipment === null ? [] : [{ code: 'already_shipped', container, shipment }];
}

/** Neither a held container nor one inside a held container goes on. */
export function containerOnHold(known: Known, container: string): Refusal[] {
  const refusals: Refusal[] = [];
  const seen = new Set<string>();
  for (
    let around: string | null = container;
    around !== null && !seen.has(around);
    around = known.container(around)?.inside ?? null
  ) {
    seen.add(around);
    for (const { hold, reason } of known.holdsOn('container', around))
      refusals.push({ code: 'on_hold', kind: 'container', id: around, hold, reason });
  }
  return refusals;
}

/** A container cannot go into itself, or into one that is already inside it. */
export function nestsItself(known: Known, container: string, into: string): Refusal[] {
  const isCycle = container === into || known.contentsOf(container).containers.includes(into);
  return isCycle ? [{ code: 'would_contain_itself', container, into }] : [];
}

/** Everything in a container must be ready to leave, and nothing around or in it may be held. */
export function notReadyToShip(known: Known, container: string): Refusal[] {
  const { units, containers } = known.contentsOf(container);
  return [
    ...containerOnHold(known, container),
    ...containers.flatMap((inner) => containerOnHold(known, inner)),
    ...units.flatMap((unit) => notReadyToLeave(known, unit)),
  ];
}
