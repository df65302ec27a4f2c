/** Inclusive ranges as people read them: `3, 7–9`. */
export function numberRanges(ranges: readonly (readonly [number, number])[]): string {
  return ranges.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}
