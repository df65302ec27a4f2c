import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';

/** What may be had without HTTPS: the page that tells how to trust this server, and whether it lives. No secret. */
const OPEN = /^\/(trust(\/[\w.]*)?|api\/health|icon\.svg|_next\/static\/[\w./~@%+-]*)(\?|$)/;
const HOST = /^(\[[\da-f:.]+\]|[\w.-]+)(:\d{1,5})?$/i;

/** Answers plain HTTP on the port that speaks HTTPS: those pages, and for all else the way to HTTPS. */
export function plainRequests(handle: RequestListener): RequestListener {
  return (request, response) => {
    const isReading = request.method === 'GET' || request.method === 'HEAD';
    if (isReading && OPEN.test(request.url ?? '')) return handle(request, response);
    const { host = '' } = request.headers;
    if (isReading && HOST.test(host) && request.url?.startsWith('/'))
      return sendToHttps(request, response, host);
    const detail = 'This server is reached by https. Nothing of this request was done.';
    const problem = { type: '/problems/https_only', title: 'Use https', status: 400, detail };
    response.writeHead(400, { 'content-type': 'application/problem+json', connection: 'close' });
    response.end(JSON.stringify(problem));
  };
}

/** Not for good: a server may be started without HTTPS again. */
function sendToHttps(request: IncomingMessage, response: ServerResponse, host: string): void {
  response.writeHead(307, { location: `https://${host}${request.url}`, 'cache-control': 'no-store' });
  response.end();
}
