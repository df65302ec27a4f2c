const SECOND_US = 1_000_000;

/**
 * Class of a span's width: the smallest k such that the width is less than 4^k seconds. Passes are indexed by it, so
 * that those overlapping an interval are found by one bounded range for each class, however wide a few of them are.
 */
export function breadthOf(widthUs: number): number {
  let breadth = 0;
  for (let spanUs = SECOND_US; widthUs >= spanUs; spanUs *= 4) breadth += 1;
  return breadth;
}

/** Largest class that a span can have: eight thousand years. */
export const BREADTH_MAX = 20;
