/** How long something took, in milliseconds: the middle one and the slow end of many runs. */
export type Timing = { p50: number; p95: number; count: number };

/** Percentiles of durations in milliseconds. */
export function timingOf(durationsMs: readonly number[]): Timing {
  const sorted = [...durationsMs].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { p50: at(0.5), p95: at(0.95), count: sorted.length };
}

/** Runs work for each input, one after the other, and times it; the first tenth only warms up. */
export async function timeEach<T>(inputs: readonly T[], work: (input: T) => unknown): Promise<Timing> {
  const warm = Math.ceil(inputs.length / 10);
  const durations: number[] = [];
  for (const [index, input] of inputs.entries()) {
    const begin = performance.now();
    await work(input);
    if (index >= warm) durations.push(performance.now() - begin);
  }
  return timingOf(durations);
}
