/** Repeatable chance: the same seed gives the same sequence on every machine. */
export type Random = {
  /** A fraction from 0 (included) to 1. */
  fraction(): number;
  /** A whole number from `low` to `high`, both included. */
  int(low: number, high: number): number;
  /** A number from `low` to `high`. */
  between(low: number, high: number): number;
  /** True with the given probability, 0 to 1. */
  chance(probability: number): boolean;
  /** One member of a list that is not empty. */
  pick<Member>(list: readonly Member[]): Member;
};

/** A generator from a 32-bit seed (the mulberry32 mixing function). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const fraction = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const int = (low: number, high: number) => low + Math.floor(fraction() * (high - low + 1));
  return {
    fraction,
    int,
    between: (low, high) => low + fraction() * (high - low),
    chance: (probability) => fraction() < probability,
    pick: (list) => {
      const picked = list[int(0, list.length - 1)];
      if (picked === undefined) throw new Error('There is nothing to pick from.');
      return picked;
    },
  };
}
