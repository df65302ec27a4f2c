const repeatedSignalMs = 1000;

/** Thrown in place of a step's result when the server was told to stop before it was ready. */
export class StopRequested extends Error {
  override name = 'StopRequested';
}

/** A wish to stop: `requested` resolves with it, `hurry` is aborted by a second one that will not wait. */
export type StopRequest = {
  requested: Promise<void>;
  hurry: AbortSignal;
  /** The step's result, or `StopRequested` thrown as soon as the wish is there. */
  unlessRequested<Value>(step: Promise<Value>): Promise<Value>;
};

/** Listens from now on to Ctrl-C, SIGTERM, a closed terminal and the death of the launcher above us. */
export function watchForStop(report: (line: string) => void): StopRequest {
  const hurry = new AbortController();
  let requestedAt: number | null = null;
  const requested = new Promise<void>((resolve) => {
    const request = (): void => {
      const now = performance.now();
      // Ctrl-C reaches us from the terminal and through the launcher: within a moment, that is one wish.
      if (requestedAt !== null && now - requestedAt > repeatedSignalMs) hurry.abort();
      if (requestedAt !== null) return;
      requestedAt = now;
      report('Stopping …');
      resolve();
    };
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, request);
    process.on('disconnect', request);
  });
  return {
    requested,
    hurry: hurry.signal,
    unlessRequested: (step) =>
      Promise.race([
        step,
        requested.then(() => {
          throw new StopRequested();
        }),
      ]),
  };
}
