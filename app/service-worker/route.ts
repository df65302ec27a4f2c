import { readServiceWorker } from '@/lib/server/read-service-worker';

export const dynamic = 'force-dynamic';

/** The service worker; it stands at the root, since a worker serves what is below it. */
export async function GET(): Promise<Response> {
  const script = await readServiceWorker();
  if (script === null) return new Response('', { status: 404 });
  return new Response(script, {
    headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache' },
  });
}
