import { isMaterial } from '@/lib/domain/gate/material-rules';
import type { Ledger } from '@/lib/domain/genealogy/graph/graph-draft';
import { cutOf, type Salvage, salvagesIn, type UnitFacts } from '@/lib/domain/genealogy/graph/unit-facts';
import type { UnitDraw } from '@/lib/domain/genealogy/unit-draws';
import { compareKeys, instantOf, type OrderKey } from '@/lib/domain/time';

/** Whether a draw is the touch of a tool, which stays for good, and not material, which can be taken off again. */
export function isTouch({ kind }: UnitDraw): boolean {
  return kind !== null && !isMaterial(kind);
}

/** A unit's own draws that supplied a position before a moment. */
export function suppliesOf(
  facts: UnitFacts,
  { position, before }: { position: string; before: OrderKey },
): UnitDraw[] {
  return facts.draws.filter(
    ({ via, positions, at, by }) =>
      via.length === 0 &&
      positions.includes(position) &&
      compareKeys({ atUs: instantOf(at), id: by }, before) < 0,
  );
}

/** Salvages that supplied a position of a unit before a moment. */
export function salvagesInto(
  facts: UnitFacts,
  { unit, position, before }: { unit: string; position: string; before: OrderKey },
): Salvage[] {
  return salvagesIn(facts).filter(
    (each) => each.into === unit && each.position === position && compareKeys(each.event, before) < 0,
  );
}

/** Whether a tool's touch came along with a salvaged part; yes also where the donor's record is not known. */
export function carriesTouch(ledger: Ledger, salvage: Salvage): boolean {
  const { fromUnit: unit, fromPosition: position } = salvage;
  const facts = ledger.facts(unit);
  if (facts === null) return true;
  const before = cutOf(facts, salvage);
  return (
    suppliesOf(facts, { position, before }).some(isTouch) ||
    salvagesInto(facts, { unit, position, before }).some((each) => carriesTouch(ledger, each))
  );
}
