import { type PrecacheEntry, Serwist } from 'serwist';

/** What of a worker's world is used here; the types of a page know it by another name. */
declare const self: {
  /** Every file of this build, put in by `scripts/bootstrap/build-service-worker.mjs`. */
  reelkinFiles: PrecacheEntry[];
  location: Location;
  addEventListener(type: 'install', listener: (event: InstallEvent) => void): void;
};

/** Not every browser can be told beforehand what a worker leaves alone. */
type InstallEvent = {
  addRoutes?(route: { condition: { urlPattern: { pathname: string } }; source: 'network' }): Promise<void>;
  waitUntil(work: Promise<unknown>): void;
};

/** The page that a tablet opens when there is no server; it is the same for everyone. */
const SHELL = '/offline';
/** Pages of which the shell is the better answer when the server fails: what a tablet must never be without. */
const SHELL_PAGES = ['/station', SHELL];
/** A server that says nothing for so long is taken for gone. */
const PAGE_LIMIT_MS = 6000;

const serwist = new Serwist({
  precacheEntries: [...self.reelkinFiles],
  precacheOptions: {
    cleanupOutdatedCaches: true,
    // The shell must be nobody's: without cookies the server makes it for a stranger.
    plugins: [{ requestWillFetch: async ({ request }) => new Request(request, { credentials: 'omit' }) }],
  },
  // A new version waits until somebody asks for it: nobody's page changes under a unit in work.
  skipWaiting: false,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request }) => request.mode === 'navigate',
      handler: ({ request, url }) => openPage(request, url),
    },
  ],
});
serwist.addEventListeners();

// What a station asks of the server is nothing to the worker, and would only wait for it.
self.addEventListener('install', (event) => {
  const route = { condition: { urlPattern: { pathname: '/api/*' } }, source: 'network' } as const;
  if (event.addRoutes !== undefined) event.waitUntil(event.addRoutes(route));
});

/** A page of the server, or the shell when there is none. */
async function openPage(request: Request, { pathname }: URL): Promise<Response> {
  try {
    const response = await within(PAGE_LIMIT_MS, fetch(request));
    const isFailed = response.status >= 500 && SHELL_PAGES.includes(pathname);
    return (isFailed ? await serwist.matchPrecache(SHELL) : undefined) ?? response;
  } catch {
    return (await serwist.matchPrecache(SHELL)) ?? Response.error();
  }
}

function within<T>(limitMs: number, work: Promise<T>): Promise<T> {
  const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error('too late')), limitMs));
  return Promise.race([work, late]);
}
