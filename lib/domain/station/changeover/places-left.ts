import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type { LeftPlace } from '@/lib/domain/station/changeover/changeover';
import type { ItemPicture } from '@/lib/domain/station/scan-picture';

/** Kinds of one thing that can be in one place only; a lot, a profile or a program may serve several stations. */
const SINGLE_KINDS: ReadonlySet<ItemKind> = new Set([
  'reel',
  'paste',
  'stencil',
  'squeegee',
  'carrier',
  'fixture',
]);

/** Where an item that goes into a slot was said to stand until now: it cannot be there any more. */
export function placesLeft({ kind, mounted }: ItemPicture, here: LeftPlace): LeftPlace[] {
  if (!SINGLE_KINDS.has(kind)) return [];
  return mounted
    .filter(({ station, slot }) => station !== here.station || slot !== here.slot)
    .map(({ station, slot }) => ({ station, slot }));
}
