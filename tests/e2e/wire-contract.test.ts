import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import packageFile from '@/package.json' with { type: 'json' };
import { pointersOf, problemOf, seedLine, wireClient } from '@/tests/support/wire-client';

const client = await wireClient();
const { ask, getJson, put, post, send } = client;
const MARK = 'WC';
let line: Awaited<ReturnType<typeof seedLine>>;

beforeAll(async () => {
  line = await seedLine(client, MARK, 4);
});

/** Every route of the contract with a request that succeeds, and a method that it does not take. */
const ROUTES = [
  { path: '/api/plant', method: 'GET', wrong: 'POST', allow: 'GET, HEAD, PUT' },
  { path: '/api/plant', method: 'PUT', body: '{}', wrong: 'DELETE', allow: 'GET, HEAD, PUT' },
  { path: '/api/events', method: 'POST', body: '{"events":[{}]}', wrong: 'GET', allow: 'POST' },
  {
    path: '/api/check',
    method: 'POST',
    body: JSON.stringify({ unit: 'W', station: 'S' }),
    wrong: 'PUT',
    allow: 'POST',
  },
  { path: '/api/trace/where-used?item=R', method: 'GET', wrong: 'POST', allow: 'GET, HEAD' },
  {
    path: `/api/trace/as-built?unit=${MARK}-W000000`,
    method: 'GET',
    wrong: 'PATCH',
    allow: 'GET, HEAD',
  },
  { path: '/api/openapi.json', method: 'GET', wrong: 'DELETE', allow: 'GET, HEAD' },
];

describe.each(ROUTES)('$method $path', ({ path, method, body, wrong, allow }) => {
  const sent = { method, ...(body === undefined ? {} : { body }) };

  it('answers JSON', async () => {
    const response = await ask(path, sent);
    expect({ status: response.status, body: await response.json() }).toMatchObject({ status: 200 });
    expect(response.headers.get('content-type')).toMatch(/^application\/json/);
  });

  it.each([
    ['no token', {}],
    ['an empty token', { authorization: 'Bearer ' }],
    ['another token', { authorization: 'Bearer sesame' }],
    ['another scheme', { authorization: 'Basic c2VzYW1lOg==' }],
    ['a cookie that means nothing', { cookie: 'reelkin_session=sesame' }],
  ])('answers 401 to %s', async (_, headers) => {
    const response = await fetch(client.origin + path, {
      ...sent,
      headers: { 'content-type': 'application/json', ...headers },
    });
    expect(response.headers.get('www-authenticate')).toMatch(/^Bearer/);
    await problemOf(response, 401);
  });

  it('answers 405 to another method, and says which it takes', async () => {
    const response = await ask(path, { method: wrong });
    expect(response.headers.get('allow')).toBe(allow);
    await problemOf(response, 405);
  });

  it('answers 401 before 405', async () => {
    await problemOf(await fetch(client.origin + path, { method: wrong }), 401);
  });
});

describe('GET /api/health', () => {
  it('answers without a token', async () => {
    const response = await fetch(`${client.origin}/api/health`);
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual({ status: 'ok', database: 'ok', version: packageFile.version });
    const wrong = await fetch(`${client.origin}/api/health`, { method: 'POST' });
    expect(wrong.headers.get('allow')).toBe('GET, HEAD');
    await problemOf(wrong, 405);
  });

  it('answers HEAD with the same and no body', async () => {
    const response = await fetch(`${client.origin}/api/health`, { method: 'HEAD' });
    expect([response.status, await response.text()]).toEqual([200, '']);
  });
});

describe('an address that no route has', () => {
  it('is 401 without a token, and 404 with one', async () => {
    for (const path of ['/api', '/api/nothing', '/api/events/1', '/api/trace']) {
      await problemOf(await fetch(client.origin + path), 401);
      await problemOf(await ask(path), 404);
    }
  });
});

describe('the plant', () => {
  const plantSchema = z.looseObject({ parts: z.array(z.looseObject({ number: z.string() })) });

  it('is an idempotent upsert: what is omitted stays, what is given comes back', async () => {
    const part = { number: `${MARK}-P1`, description: 'capacitor', floorLife: '2a' };
    for (let round = 0; round < 2; round += 1) expect((await put({ parts: [part] })).status).toBe(200);
    expect((await put({ parts: [{ number: part.number, description: 'other' }] })).status).toBe(200);
    const { parts } = plantSchema.parse(await getJson('/api/plant'));
    const same = parts.filter(({ number }) => number === part.number);
    expect(same).toEqual([{ ...part, description: 'other' }]);
    const before = await getJson('/api/plant');
    expect((await put(before)).status).toBe(200);
    expect(await getJson('/api/plant')).toEqual(before);
  });

  it('takes the example of the contract whole, and gives it back', async () => {
    const example = {
      site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
      stations: [
        {
          code: `${MARK}-L1`,
          line: 'L1',
          operation: 'place',
          slots: [
            { name: '1-01', holds: 'reel' },
            { name: 'profile', holds: 'profile' },
          ],
        },
      ],
      products: [
        {
          number: `${MARK}-X`,
          revision: 'C',
          serialPattern: '^WX4C[0-9]{7}$',
          route: [
            { step: 20, operation: 'place', attempts: 2 },
            { step: 60, operation: 'xray', sample: 0.12 },
          ],
          bom: [
            { part: 'C-100N-0402', positions: ['C1', 'C2'], station: `${MARK}-L1`, slot: '1-01' },
            { part: 'CONN-8', positions: ['J1'] },
            { product: 'PSU2', positions: ['A1'] },
          ],
        },
      ],
      operators: [{ badge: `${MARK}-op`, name: 'A', operations: ['print', 'place'] }],
    };
    expect((await put(example)).status).toBe(200);
    const { stations, products, operators } = example;
    expect(await getJson('/api/plant')).toMatchObject({
      site: example.site,
      stations: expect.arrayContaining(stations),
      products: expect.arrayContaining(products),
      operators: expect.arrayContaining(operators),
    });
  });
});

describe('a check', () => {
  it('says go, or no-go with reasons and the next step', async () => {
    const [unit = ''] = line.units;
    const answer = await post('/api/check', { unit, station: line.placer });
    expect(await answer.json()).toEqual({ go: true, reasons: [], next: null });
    const noGo = await post('/api/check', { unit: 'nobody', station: line.placer });
    expect(await noGo.json()).toEqual({
      go: false,
      reasons: [{ code: 'unknown_unit', unit: 'nobody' }],
      next: null,
    });
  });

  it.each([
    ['no body', '', ['']],
    ['nothing in it', '{}', ['/unit', '/station']],
    ['an unknown key', '{"unit":"W","station":"S","now":true}', ['/now']],
    ['a bad code', '{"unit":" W","station":"S"}', ['/unit']],
    ['a bad time', '{"unit":"W","station":"S","at":"today"}', ['/at']],
  ])('with %s is malformed', async (_, body, pointers) => {
    const problem = await problemOf(await ask('/api/check', { method: 'POST', body }), 400);
    expect(pointersOf(problem)).toEqual(expect.arrayContaining(pointers));
  });
});

describe('as-built', () => {
  it('tells a unit, its draws and its events', async () => {
    const [unit = ''] = line.units;
    expect(await getJson(`/api/trace/as-built?unit=${unit}`)).toMatchObject({
      unit,
      place: { kind: 'stock' },
      draws: [{ item: line.stencil }, { item: line.reel, certainty: 'certain', relation: 'contains' }],
      events: [{ type: 'unit.started' }, { type: 'unit.processed' }, { type: 'unit.processed' }],
    });
  });

  it('is 404 for a unit that nobody knows', async () => {
    await problemOf(await ask('/api/trace/as-built?unit=nobody'), 404);
  });

  it.each([
    ['', '/unit'],
    ['?unit=A&unit=B', '/unit'],
    ['?unit=A&colour=red', '/colour'],
    ['?unit=A&at=today', '/at'],
    ['?unit=%20A', '/unit'],
    ['?unit=A%00', '/unit'],
    ['?unit=A&a/b~c=x', '/a~1b~0c'],
  ])('is 400 for %s', async (query, pointer) => {
    const problem = await problemOf(await ask(`/api/trace/as-built${query}`), 400);
    expect(pointersOf(problem)).toContain(pointer);
  });
});

describe('events', () => {
  it('are answered in order, one result each', async () => {
    const [unit = ''] = line.units;
    const signed = line.say.signed(unit);
    const results = await send(signed, signed, { ...signed, body: { unit, meaning: 'other' } }, {});
    expect(results).toMatchObject([
      { id: signed.id, outcome: 'recorded' },
      { id: signed.id, outcome: 'already_recorded' },
      { id: signed.id, outcome: 'refused', refusal: { code: 'event_id_reused' } },
      { id: null, outcome: 'refused', refusal: { code: 'malformed' } },
    ]);
  });

  it('under record are flagged', async () => {
    const unknown = line.say.passed(`${MARK}-nobody`, line.placer, { gate: 'record' });
    expect(await send(unknown)).toEqual([
      {
        id: unknown.id,
        outcome: 'recorded',
        flags: [{ code: 'unknown_unit', unit: `${MARK}-nobody` }],
      },
    ]);
  });
});
