import { beforeAll, expect, test } from 'vitest';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';

beforeAll(() => {
  process.env.REELKIN_LOG = 'silent';
});

const get = (handle: () => Promise<Response>): Promise<Response> =>
  defineRoute({ GET: { action: 'public', handle } }).GET(new Request('http://x/api/y'));

function fail(message: string, facts: object = {}): Promise<Response> {
  return get(() => Promise.reject(Object.assign(new Error(message), facts)));
}

test('an error that nobody expected tells its number and nothing else', async () => {
  const response = await fail('password authentication failed for user "reelkin"');
  expect(response.status).toBe(500);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  const text = await response.text();
  expect(text).toContain(response.headers.get('x-request-id'));
  expect(text).not.toMatch(/password|reelkin"|stack|define-route/);
});

test.each([
  ['connect ECONNREFUSED 127.0.0.1:5432', { code: 'ECONNREFUSED' }],
  ['terminating connection due to administrator command', { code: '57P01' }],
  ['Connection terminated unexpectedly', {}],
  ["Can't reach database server", { code: 'P1001' }],
  ['wrapped', { cause: Object.assign(new Error('lost'), { code: '08006' }) }],
])('%s: the database cannot be asked now', async (message, facts) => {
  const response = await fail(message, facts);
  expect(response.status).toBe(503);
  expect(response.headers.get('retry-after')).toBe('2');
});

test('a problem thrown anywhere below is the answer, with its headers and pointers', async () => {
  const errors = [{ pointer: '/a', code: 'odd', detail: 'Odd.' }];
  const response = await get(() =>
    Promise.reject(new ProblemError('conflict', { detail: 'No.', errors, headers: { 'x-why': 'a' } })),
  );
  expect(response.status).toBe(409);
  expect(response.headers.get('x-why')).toBe('a');
  expect(await response.json()).toEqual({
    type: '/problems/conflict',
    title: 'The request does not fit the present state',
    status: 409,
    detail: 'No.',
    errors,
  });
});

test('an answer keeps its status and headers, is not stored by default, and HEAD has no body', async () => {
  let isCancelled = false;
  const handle = async () =>
    new Response(
      new ReadableStream({
        pull: (controller) => controller.enqueue(new TextEncoder().encode('a,b')),
        cancel() {
          isCancelled = true;
        },
      }),
      { status: 203, headers: { 'content-type': 'text/csv' } },
    );
  const route = defineRoute({ GET: { action: 'public', handle } });
  const response = await route.GET(new Request('http://x/api/y', { method: 'HEAD' }));
  expect(response.status).toBe(203);
  expect(response.headers.get('content-type')).toBe('text/csv');
  expect(response.headers.get('cache-control')).toBe('no-store');
  expect(response.body).toBeNull();
  expect(isCancelled).toBe(true);
});
