/** An inclusive range of numbers. */
export type NumberRange = [from: number, to: number];

/** Numbers of a device that have arrived, as ranges that neither touch nor overlap, in order. */
export type ArrivedNumbers = readonly NumberRange[];

/** What happened to the gaps of a device when a number arrived: nothing, or one was opened, closed or made smaller. */
export function withNumber(
  numbers: ArrivedNumbers,
  number: number,
): { numbers: ArrivedNumbers; changesGaps: boolean } {
  if (numbers.some(([from, to]) => from <= number && number <= to)) return { numbers, changesGaps: false };
  const highest = numbers.at(-1)?.[1] ?? 0;
  const ranges: NumberRange[] = [...numbers.map(([from, to]): NumberRange => [from, to]), [number, number]];
  ranges.sort(([a], [b]) => a - b);
  const joined: NumberRange[] = [];
  for (const range of ranges) {
    const last = joined.at(-1);
    if (last !== undefined && last[1] + 1 === range[0]) last[1] = range[1];
    else joined.push(range);
  }
  return { numbers: joined, changesGaps: number !== highest + 1 };
}

/** The numbers below the highest that have not arrived. */
export function gapsOf(numbers: ArrivedNumbers): NumberRange[] {
  let next = 1;
  return numbers.flatMap(([from, to]): NumberRange[] => {
    const gap: NumberRange = [next, from - 1];
    next = to + 1;
    return gap[0] <= gap[1] ? [gap] : [];
  });
}
