import type { LoggedEvent } from '@/lib/domain/events/logged-event';

/** Positions that a scanned or installed part stands at now, and those whose part was removed and not replaced. */
type PartPositions = { fitted: string[]; open: string[] };

/** Where parts stand on a unit and where they are missing, from its events that count, in order. */
export function partPositions(history: readonly LoggedEvent[]): PartPositions {
  const fitted = new Set<string>();
  const open = new Set<string>();
  for (const event of history) {
    if (event.type === 'unit.processed')
      for (const position of (event.body.used ?? []).flatMap((used) => used.positions ?? [])) {
        fitted.add(position);
        open.delete(position);
      }
    if (event.type === 'part.removed') {
      fitted.delete(event.body.position);
      open.add(event.body.position);
    }
    if (event.type === 'part.installed') {
      fitted.add(event.body.position);
      open.delete(event.body.position);
    }
  }
  return { fitted: [...fitted], open: [...open] };
}
