import { expect, test } from 'vitest';
import { nestingDepth } from '@/lib/server/http/nesting-depth';
import { ProblemError } from '@/lib/server/http/problem';
import { BODY_BYTES_MAX, readJsonBody } from '@/lib/server/http/read-body';

const JSON_TYPE = { 'content-type': 'application/json' };

async function problemOf(body: BodyInit | null, headers: Record<string, string> = JSON_TYPE) {
  // Node sends a stream only with this word, which the types of the browser do not know.
  const init = { method: 'POST', headers, body, duplex: 'half' };
  const request = new Request('http://x/', init);
  const error: unknown = await readJsonBody(request).catch((thrown: unknown) => thrown);
  if (!(error instanceof ProblemError)) throw error;
  return { code: error.code, errors: error.facts.errors?.map(({ pointer, code }) => [pointer, code]) };
}

function inChunks(byteCount: number): ReadableStream<Uint8Array> {
  let left = byteCount;
  return new ReadableStream({
    pull(controller) {
      const size = Math.min(left, 100_000);
      if (size > 0) controller.enqueue(new Uint8Array(size).fill(0x20));
      left -= size;
      if (left === 0) controller.close();
    },
  });
}

test.each([JSON_TYPE, {}, { 'content-type': 'Application/JSON; charset=utf-8' }])(
  'JSON as %j',
  async (type) => {
    const body = new TextEncoder().encode('{"unit":"Ω-1"}');
    const request = new Request('http://x/', { method: 'POST', headers: type, body });
    expect(await readJsonBody(request)).toEqual({ unit: 'Ω-1' });
  },
);

test.each(['', '{"unit":', '{"a":1}}', 'undefined', "{'a':1}", '[1,]'])('%j is not JSON', async (text) => {
  expect(await problemOf(text)).toEqual({ code: 'malformed', errors: [['', 'not_json']] });
});

test('a request without a body is malformed', async () => {
  expect(await problemOf(null)).toEqual({ code: 'malformed', errors: [['', 'not_json']] });
});

test('bytes that are not UTF-8 are malformed', async () => {
  const cutOff = new Uint8Array([0x22, 0xe2, 0x82, 0x22]);
  expect(await problemOf(cutOff)).toEqual({ code: 'malformed', errors: [['', 'not_utf8']] });
});

test('a body that breaks off is malformed', async () => {
  const broken = new ReadableStream({ pull: (controller) => controller.error(new Error('aborted')) });
  expect(await problemOf(broken)).toEqual({ code: 'malformed', errors: [['', 'incomplete']] });
});

test('a body of exactly 4 MiB is read, one byte more is too large, with a stated length or in chunks', async () => {
  const text = `"${'a'.repeat(BODY_BYTES_MAX - 2)}"`;
  const request = new Request('http://x/', { method: 'POST', body: text, headers: JSON_TYPE });
  expect(await readJsonBody(request)).toHaveLength(BODY_BYTES_MAX - 2);
  expect(await problemOf(`${text} `)).toEqual({ code: 'body_too_large', errors: undefined });
  expect(await problemOf(inChunks(BODY_BYTES_MAX + 1))).toEqual({
    code: 'body_too_large',
    errors: undefined,
  });
});

test('a body that never ends is given up', async () => {
  let byteCount = 0;
  const endless = new ReadableStream<Uint8Array>({
    pull(controller) {
      byteCount += 1_000_000;
      controller.enqueue(new Uint8Array(1_000_000));
    },
  });
  expect((await problemOf(endless)).code).toBe('body_too_large');
  expect(byteCount).toBeLessThan(70_000_000);
});

test.each(['text/plain', 'application/x-www-form-urlencoded', 'application/problem+json'])(
  '%s, which clients write by themselves, is taken for JSON',
  async (type) => {
    const headers = { 'content-type': type };
    const request = new Request('http://127.0.0.1/', { method: 'POST', headers, body: '{"a":1}' });
    expect(await readJsonBody(request)).toEqual({ a: 1 });
  },
);

test.each(['multipart/form-data; boundary=x', 'application/xml', 'image/png'])(
  '%s is not taken',
  async (type) => {
    expect((await problemOf('{}', { 'content-type': type })).code).toBe('unsupported_media_type');
  },
);

test('a compressed body is not taken', async () => {
  const headers = { ...JSON_TYPE, 'content-encoding': 'gzip' };
  expect((await problemOf('{}', headers)).code).toBe('unsupported_media_type');
});

test('a tower of a million brackets is malformed', async () => {
  const tower = '['.repeat(1_000_000) + ']'.repeat(1_000_000);
  expect(await problemOf(tower)).toEqual({ code: 'malformed', errors: [['', 'nested_too_deep']] });
});

test.each([
  ['1', 0],
  ['{}', 1],
  ['{"a":[{}]}', 3],
  ['[[],[],[[]]]', 3],
  ['"[[[["', 0],
  ['{"[\\"[{":"\\\\"}', 1],
])('%s nests %i levels', (text, depth) => {
  expect(nestingDepth(text)).toBe(depth);
});
