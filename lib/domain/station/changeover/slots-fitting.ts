import type { ItemPicture } from '@/lib/domain/station/scan-picture';
import type { SlotPicture } from '@/lib/domain/station/slot-picture';

/** Names of the slots an item belongs into: where a BOM wants its part, else those of its kind that no BOM names. */
export function slotsFitting(
  slots: readonly SlotPicture[],
  { kind, part }: Pick<ItemPicture, 'kind' | 'part'>,
): string[] {
  const ofKind = slots.filter((slot) => slot.holds === null || slot.holds === kind);
  const named = ofKind.filter(
    (slot) => part !== null && slot.expected.some((row) => row.parts.includes(part)),
  );
  return (named.length > 0 ? named : ofKind.filter((slot) => slot.expected.length === 0)).map(
    (slot) => slot.name,
  );
}
