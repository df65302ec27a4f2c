import type { IncomingMessage, ServerResponse } from 'node:http';

const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'];
const LOOPBACK = /^(127\.|::1$|::ffff:127\.)/;

/**
 * What must be settled on the connection itself, before Next: methods that Next has no word for are answered with 405
 * (false: the request is done with), and only a proxy on this machine is believed about whom it speaks for, and how it
 * was reached itself.
 */
export function admitRequest(request: IncomingMessage, response: ServerResponse): boolean {
  const peer = request.socket.remoteAddress ?? 'unknown';
  if (!LOOPBACK.test(peer)) {
    request.headers['x-forwarded-for'] = peer;
    delete request.headers['x-forwarded-proto'];
    delete request.headers['x-forwarded-host'];
  }
  if ('encrypted' in request.socket && request.socket.encrypted === true)
    request.headers['x-forwarded-proto'] = 'https';
  if (METHODS.includes(request.method ?? '')) return true;
  const title = 'This address does not take this method';
  const problem = {
    type: '/problems/method_not_allowed',
    title,
    status: 405,
    detail: 'The server does not know it.',
  };
  response.writeHead(405, { 'content-type': 'application/problem+json', allow: METHODS.join(', ') });
  response.end(JSON.stringify(problem));
  return false;
}
