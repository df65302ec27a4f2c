import { randomBytes } from 'node:crypto';
import { expect } from 'vitest';
import { z } from 'zod';
import { type EventMaker, eventMaker } from '@/tests/support/event-maker';
import { serverWithPeople } from '@/tests/support/server-with-people';

/** RFC 9457 with the errors of the wire contract. */
const problemSchema = z.strictObject({
  type: z.string().min(1),
  title: z.string().min(1),
  status: z.int().min(400).max(599),
  detail: z.string().min(1),
  errors: z
    .array(
      z.strictObject({
        pointer: z.string().regex(/^(\/([^~/]|~0|~1)*)*$/),
        code: z.string().regex(/^[a-z0-9_]+$/),
        detail: z.string().min(1),
      }),
    )
    .optional(),
});
export type Problem = z.infer<typeof problemSchema>;

const resultsSchema = z.strictObject({
  results: z.array(
    z.strictObject({
      id: z.string().nullable(),
      outcome: z.enum(['recorded', 'already_recorded', 'refused']),
      refusal: z.looseObject({ code: z.string() }).optional(),
      flags: z.array(z.looseObject({ code: z.string() })).optional(),
    }),
  ),
});
export type Results = z.infer<typeof resultsSchema>['results'];

type Sent = { method?: string; body?: string | Uint8Array<ArrayBuffer>; headers?: Record<string, string> };

/** Starts a server and talks to it as a client would that knows the wire contract only. */
export async function wireClient() {
  const { origin, apiToken } = await serverWithPeople();

  async function ask(path: string, { method = 'GET', body, headers = {} }: Sent = {}): Promise<Response> {
    const authorization = `Bearer ${apiToken}`;
    const type: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
    return fetch(origin + path, {
      method,
      headers: { authorization, ...type, ...headers },
      ...(body === undefined ? {} : { body }),
    });
  }

  async function getJson(path: string): Promise<unknown> {
    const response = await ask(path);
    if (response.status !== 200) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    expect(response.headers.get('content-type')).toMatch(/^application\/json/);
    return response.json();
  }

  const put = (document: unknown) => ask('/api/plant', { method: 'PUT', body: JSON.stringify(document) });
  const post = (path: string, document: unknown) =>
    ask(path, { method: 'POST', body: JSON.stringify(document) });

  return {
    origin,
    ask,
    put,
    post,
    getJson,
    /** Sends events together; the answer must be 200 with one result each. */
    send: async (...events: unknown[]): Promise<Results> => {
      const response = await post('/api/events', { events });
      const answer: unknown = await response.json();
      expect({ status: response.status, answer }).toMatchObject({ status: 200 });
      const { results } = resultsSchema.parse(answer);
      expect(results.length).toBe(events.length);
      return results;
    },
    /** Fails unless the server says that it and its database are well. */
    expectAlive: async (): Promise<void> => {
      expect(await getJson('/api/health')).toMatchObject({ status: 'ok', database: 'ok' });
    },
  };
}

export type WireClient = Awaited<ReturnType<typeof wireClient>>;

/** Reads an answer that must be a problem document with this status. */
export async function problemOf(response: Response, status: number): Promise<Problem> {
  const text = await response.text();
  expect({ status: response.status, text }).toMatchObject({ status });
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  const problem = problemSchema.parse(JSON.parse(text));
  expect(problem.status).toBe(status);
  return problem;
}

/** An event maker whose ids no other test of the same server makes. */
export function freshEventMaker(): EventMaker {
  return eventMaker('2026-03-02T06:00:00Z', randomBytes(4).toString('hex'));
}

/** The pointers of a problem's errors. */
export function pointersOf({ errors = [] }: Problem): string[] {
  return errors.map(({ pointer }) => pointer);
}

/**
 * A printer with a stencil and a placer with a reel, in codes that nobody else uses, and `count` units that went over
 * both: every unit drew from reel and stencil.
 */
export async function seedLine(
  client: WireClient,
  mark: string,
  count: number,
): Promise<{ say: EventMaker; units: string[]; reel: string; stencil: string; placer: string }> {
  const code = (name: string) => `${mark}-${name}`;
  const [printer, placer, reel, stencil] = [code('PRINT'), code('PLACE'), code('R1'), code('S1')];
  const response = await client.put({
    parts: [{ number: code('C-100N') }],
    stations: [
      { code: printer, operation: code('print'), slots: [{ name: 'stencil', holds: 'stencil' }] },
      { code: placer, operation: code('place'), slots: [{ name: 'F1', holds: 'reel' }] },
    ],
    products: [
      {
        number: code('WX4'),
        revision: 'C',
        route: [
          { step: 10, operation: code('print') },
          { step: 20, operation: code('place') },
        ],
        bom: [{ part: code('C-100N'), positions: ['C1'], station: placer, slot: 'F1' }],
      },
    ],
  });
  expect(response.status).toBe(200);
  const say = freshEventMaker();
  const units = Array.from({ length: count }, (_, index) => code(`W${String(index).padStart(6, '0')}`));
  const events = [
    say.received({ item: reel, kind: 'reel', part: code('C-100N'), lot: code('L1') }),
    say.received({ item: stencil, kind: 'stencil' }),
    say.mounted(stencil, printer, 'stencil'),
    say.mounted(reel, placer, 'F1'),
    ...units.flatMap((unit) => [
      say.started({ unit, product: code('WX4'), revision: 'C' }),
      say.passed(unit, printer),
      say.passed(unit, placer),
    ]),
  ];
  for (let start = 0; start < events.length; start += 1000)
    for (const { outcome, refusal } of await client.send(...events.slice(start, start + 1000)))
      expect({ outcome, refusal }).toEqual({ outcome: 'recorded', refusal: undefined });
  return { say, units, reel, stencil, placer };
}
