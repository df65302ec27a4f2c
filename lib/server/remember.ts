/**
 * Asks again only when the last answer is older than `ageMaxMs`; who comes while it is being made waits for the same
 * one. A failure is not remembered.
 */
export function remember<T>(ask: () => Promise<T>, ageMaxMs: number): () => Promise<T> {
  let answer: { value: Promise<T>; askedAtMs: number } | null = null;
  return () => {
    const nowMs = performance.now();
    if (answer !== null && nowMs - answer.askedAtMs < ageMaxMs) return answer.value;
    const value = ask();
    answer = { value, askedAtMs: nowMs };
    value.catch(() => {
      answer = null;
    });
    return value;
  };
}
