// One set for the process, whichever bundle asks first.
declare global {
  var reelkinChangeListeners: Set<() => void> | undefined;
}

function listeners(): Set<() => void> {
  globalThis.reelkinChangeListeners ??= new Set();
  return globalThis.reelkinChangeListeners;
}

/** Says that the record or the plant has changed. What another process writes is not told: readers ask now and then. */
export function tellChange(): void {
  for (const listener of listeners()) listener();
}

/** Calls back after every change, until the returned function is called. */
export function watchChanges(listener: () => void): () => void {
  listeners().add(listener);
  return () => listeners().delete(listener);
}
