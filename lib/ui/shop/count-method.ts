/** How an item can be counted; the wire takes any code, these are offered. */
export const COUNT_METHODS = ['by-hand', 'x-ray', 'weighed'] as const;
export type CountMethod = (typeof COUNT_METHODS)[number];

/** Whether a way of counting is one that this screen offers, and so has words. */
export function isCountMethod(method: string): method is CountMethod {
  return COUNT_METHODS.some((each) => each === method);
}

/** A quantity as people type it, with a dot or one comma before decimals, or null when it is no number from 0 on. */
export function readQuantity(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  if (!/^\d+(\.\d+)?$/.test(plain)) return null;
  const quantity = Number(plain);
  return Number.isFinite(quantity) ? quantity : null;
}

/** Whether a count is above the quantity last known of an item, which using it up can only make less. */
export function isMoreThanKnown(count: number | null, known: number | null): boolean {
  return count !== null && known !== null && count > known;
}
