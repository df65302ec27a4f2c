const KEPT_AT = 'reelkin.contact';
const KEEP_EVERY_MS = 5000;

/** Whether the server answered last time, and when it last did (milliseconds since the epoch, by this device's clock). */
export type Contact = { isOnline: boolean; lastAt: number | null };

const BEFORE: Contact = { isOnline: true, lastAt: null };

let view = BEFORE;
let keptAt = 0;
const listeners = new Set<() => void>();

/** Notes that the server has answered, or that it has not; every request of this page ends here. */
export function noteContact(isOnline: boolean): void {
  const now = Date.now();
  const lastAt = isOnline ? now : (view.lastAt ?? keptContact());
  // A second's difference changes nothing that anybody reads.
  if (isOnline === view.isOnline && lastAt !== null && view.lastAt !== null && lastAt - view.lastAt < 1000)
    return;
  view = { isOnline, lastAt };
  if (isOnline && now - keptAt >= KEEP_EVERY_MS) {
    keptAt = now;
    localStorage.setItem(KEPT_AT, String(now));
  }
  for (const listener of listeners) listener();
}

/** What is known of the server now. */
export function contactNow(): Contact {
  return view;
}

/** What a page knows before it has asked anything. */
export function contactBefore(): Contact {
  return BEFORE;
}

/** Calls back whenever the contact changes, until the returned function is called. */
export function watchContact(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** When the server last answered a page of this device that is closed now, or null. */
function keptContact(): number | null {
  const kept = Number(localStorage.getItem(KEPT_AT) ?? Number.NaN);
  return Number.isFinite(kept) ? kept : null;
}
