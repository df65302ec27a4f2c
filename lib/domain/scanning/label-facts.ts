import type { DataFields } from '@/lib/domain/scanning/format-06';
import type { Gs1Element } from '@/lib/domain/scanning/gs1-elements';

/** What a label says; each value once. A fact is null when the label does not say it, or says two different ones. */
export type LabelFacts = {
  /** Package or logistic unit: a reel, a bag, a carton. */
  packageId: string | null;
  serial: string | null;
  lot: string | null;
  /** Our own part number, else the supplier's. */
  part: string | null;
  quantity: string | null;
  supplier: string | null;
};

/** Facts of an ANSI MH10.8.2 label. */
export function factsOfDataFields({ fields }: DataFields): LabelFacts {
  const only = (...identifiers: string[]) => firstSingle(identifiers.map((di) => fields.get(di) ?? []));
  return {
    packageId: only('3S'),
    serial: only('S'),
    lot: only('1T'),
    part: only('P', '1P'),
    quantity: only('Q'),
    supplier: only('V', '1V'),
  };
}

/** Facts of a GS1 string. */
export function factsOfGs1(elements: readonly Gs1Element[]): LabelFacts {
  const only = (...identifiers: string[]) =>
    firstSingle(
      identifiers.map((ai) => elements.filter((element) => element.ai === ai).map(({ value }) => value)),
    );
  return {
    packageId: only('00'),
    serial: only('21'),
    lot: only('10'),
    part: only('241', '240', '01'),
    quantity: only('30', '37'),
    supplier: null,
  };
}

/**
 * The code that a label is scanned for: the package in the hand, else the serial, the lot, the part. Always the same
 * one for the same label, so that what was booked in by it is found by it again.
 */
export function codeOfFacts({ packageId, serial, lot, part }: LabelFacts): string | null {
  return packageId ?? serial ?? lot ?? part;
}

/** The first list that has anything, if it has one value only. */
function firstSingle(lists: readonly (readonly string[])[]): string | null {
  const values = new Set(lists.find((list) => list.length > 0));
  const [value] = values;
  return values.size === 1 && value !== undefined ? value : null;
}
