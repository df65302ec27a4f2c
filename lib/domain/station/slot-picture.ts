import { z } from 'zod';
import { type ItemKind, itemKindSchema } from '@/lib/domain/events/vocabulary';
import { isMaterial } from '@/lib/domain/gate/material-rules';
import type { Plant } from '@/lib/domain/plant/plant';

/** How a slot stands: filled as a BOM wants it, empty though needed, wrong part or kind, held or retired, not needed. */
export const SLOT_STATES = ['ready', 'empty', 'wrong', 'held', 'free'] as const;

/** An item in a slot; kind is null for one that was never received. */
export const standingItemSchema = z.object({
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
  quantity: z.number().nullable(),
  isHeld: z.boolean(),
  isRetired: z.boolean(),
  since: z.string(),
  /** What it was spliced to, while units may still take from that end. */
  oldEnd: z.string().nullable(),
});
export type StandingItem = z.infer<typeof standingItemSchema>;

/** A slot of a station, what may stand there for which product, and what does. */
export const slotPictureSchema = z.object({
  name: z.string(),
  /** Null for a slot that the plant does not list but something was mounted in. */
  holds: itemKindSchema.nullable(),
  expected: z.array(z.object({ product: z.string(), revision: z.string(), parts: z.array(z.string()) })),
  item: standingItemSchema.nullable(),
  state: z.enum(SLOT_STATES),
});
export type SlotPicture = z.infer<typeof slotPictureSchema>;

/** Every slot of a station in the order of the plant file, then slots that only the BOM or a mount names. */
export function slotPictures(
  plant: Plant,
  station: string,
  contents: ReadonlyMap<string, StandingItem>,
): SlotPicture[] {
  const expected = expectedBySlot(plant, station);
  const declared = (plant.station(station)?.slots ?? []).map((slot) => slot.name);
  const names = new Set([...declared, ...expected.keys(), ...contents.keys()]);
  return [...names].map((name) => {
    const holds = plant.slotHolds(station, name);
    const wanted = expected.get(name) ?? [];
    const item = contents.get(name) ?? null;
    return { name, holds, expected: wanted, item, state: slotState(wanted, holds, item) };
  });
}

function expectedBySlot(plant: Plant, station: string): Map<string, SlotPicture['expected']> {
  const bySlot = new Map<string, SlotPicture['expected']>();
  for (const product of plant.file.products ?? [])
    for (const { slot, parts } of plant.suppliesAt(station, product)) {
      const row = { product: product.number, revision: product.revision, parts };
      bySlot.set(slot, [...(bySlot.get(slot) ?? []), row]);
    }
  return bySlot;
}

/** The state of a slot for the products that are looked at: all of them, or one. */
export function slotState(
  expected: SlotPicture['expected'],
  holds: ItemKind | null,
  item: StandingItem | null,
): SlotPicture['state'] {
  const isNeeded = expected.length > 0 || (holds !== null && !isMaterial(holds));
  if (item === null) return isNeeded ? 'empty' : 'free';
  if (item.isHeld || item.isRetired) return 'held';
  if (item.kind === null || (holds !== null && item.kind !== holds)) return 'wrong';
  const parts = expected.flatMap((row) => row.parts);
  return parts.length > 0 && (item.part === null || !parts.includes(item.part)) ? 'wrong' : 'ready';
}

/** A station's slots as one product revision needs them: those it draws from, each judged by its BOM alone. */
export function slotsFor(
  slots: readonly SlotPicture[],
  product: { product: string; revision: string },
): SlotPicture[] {
  return slots.flatMap((slot) => {
    const expected = slot.expected.filter(
      (row) => row.product === product.product && row.revision === product.revision,
    );
    const isDrawn = expected.length > 0 || (slot.holds !== null && !isMaterial(slot.holds));
    return isDrawn ? [{ ...slot, expected, state: slotState(expected, slot.holds, slot.item) }] : [];
  });
}
