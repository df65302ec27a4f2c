import { findHeldMaterial } from '@/lib/data/holds/find-held-material';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';
import { asBuilt } from '@/lib/server/as-built';
import { database } from '@/lib/server/database';

/** Units in a unit at any depth that are looked into. */
const UNITS_MAX = 32;

/** What is on hold now and is in a unit, or in the units inside it. */
export async function heldInside(unit: string): Promise<UnitCaution[]> {
  const held = await findHeldMaterial(database().pool);
  if (held.length === 0) return [];
  const items = new Set<string>();
  const lots = new Set<string>();
  const family = new Set([unit]);
  for (const each of family) {
    const built = await asBuilt(each);
    for (const { item, lot, relation } of built?.draws ?? []) {
      if (relation !== 'contains') continue;
      items.add(item);
      if (lot !== null) lots.add(lot);
    }
    for (const { unit: inner, until } of built?.children ?? [])
      if (until === null && family.size < UNITS_MAX) family.add(inner);
  }
  return held
    .filter(({ kind, id }) => (kind === 'item' ? items : lots).has(id))
    .map((each) => ({ what: 'held_inside', ...each }));
}
