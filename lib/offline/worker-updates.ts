const WORKER = '/service-worker';
const LOOK_EVERY_MS = 30 * 60_000;

let hasStarted = false;
let waiting: ServiceWorker | null = null;
let isWanted = false;
const listeners = new Set<() => void>();

/**
 * Has this browser keep the station's pages, once; where it cannot (no secure context), stations need the server. A new
 * version is fetched in the background and waits until somebody takes it.
 */
export function startWorker(): void {
  const workers = navigator.serviceWorker;
  if (hasStarted || workers === undefined) return;
  hasStarted = true;
  workers.addEventListener('controllerchange', () => {
    if (isWanted) location.reload();
  });
  void workers
    .register(WORKER)
    .then((registration) => {
      note(registration);
      registration.addEventListener('updatefound', () => {
        const { installing } = registration;
        installing?.addEventListener('statechange', () => note(registration));
      });
      setInterval(() => void registration.update().catch(() => undefined), LOOK_EVERY_MS);
    })
    .catch(() => undefined);
}

/** Whether a new version waits to be taken. */
export function isUpdateWaiting(): boolean {
  return waiting !== null;
}

/** Calls back when a new version waits, until the returned function is called. */
export function watchUpdates(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Takes the new version, and opens this page again with it; the device's log and its unit in work stay. */
export function takeUpdate(): void {
  isWanted = true;
  waiting?.postMessage({ type: 'SKIP_WAITING' });
}

/** The first worker of a browser waits for nobody; one beside an active worker is a new version. */
function note(registration: ServiceWorkerRegistration): void {
  waiting = registration.active === null ? null : registration.waiting;
  for (const listener of listeners) listener();
}
