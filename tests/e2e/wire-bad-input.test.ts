import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { numberedId } from '@/tests/support/event-maker';
import { REFUSED_EVENTS } from '@/tests/support/event-samples';
import { pointersOf, problemOf, seedLine, wireClient } from '@/tests/support/wire-client';

const client = await wireClient();
const { ask, getJson, put, post, send, expectAlive } = client;
const MARK = 'WB';
const MIB = 1024 * 1024;
let line: Awaited<ReturnType<typeof seedLine>>;

beforeAll(async () => {
  line = await seedLine(client, MARK, 2);
});
afterEach(expectAlive);

const putText = (body: string | Uint8Array<ArrayBuffer>, headers = {}) =>
  ask('/api/plant', { method: 'PUT', body, headers });
const postText = (body: string | Uint8Array<ArrayBuffer>, headers = {}) =>
  ask('/api/events', { method: 'POST', body, headers });

const station = (change: object) => ({ stations: [{ code: 'S', operation: 'o', ...change }] });
const product = (change: object) => ({ products: [{ number: 'N', revision: 'A', ...change }] });
const step = (change: object) => product({ route: [{ step: 1, operation: 'o', ...change }] });
const bom = (row: object) => product({ bom: [row] });

/** A fault of a plant file, and where it is. */
const BAD_PLANTS: [title: string, document: unknown, pointer: string][] = [
  ['null', null, ''],
  ['a list', [], ''],
  ['a text', 'plant', ''],
  ['an unknown key', { colour: 'red' }, '/colour'],
  ['a key with a slash and a tilde', { 'a/b~c': 1 }, '/a~1b~0c'],
  ['lists that are none', { parts: {} }, '/parts'],
  ['a part that is none', { parts: [null] }, '/parts/0'],
  ['a part without its number', { parts: [{ number: 'P' }, {}] }, '/parts/1/number'],
  [
    'an unknown key deep inside',
    station({ slots: [{ name: 'F', holds: 'reel', x: 1 }] }),
    '/stations/0/slots/0/x',
  ],
  ['a part twice', { parts: [{ number: 'P' }, { number: 'P' }] }, '/parts/1/number'],
  ['a badge twice', { operators: [{ badge: 'b' }, { badge: 'b' }] }, '/operators/1/badge'],
  [
    'a slot twice',
    station({ slots: [{ name: 'F', holds: 'reel' }, { name: 'F', holds: 'lot' }] }), // biome-ignore format: short
    '/stations/0/slots/1/name',
  ],
  [
    'a step twice',
    product({ route: [{ step: 1, operation: 'a' }, { step: 1, operation: 'b' }] }), // biome-ignore format: short
    '/products/0/route/1/step',
  ],
  ['a kind that is none', station({ slots: [{ name: 'F', holds: 'glue' }] }), '/stations/0/slots/0/holds'],
  ['a code with a space at its end', station({ code: 'S ' }), '/stations/0/code'],
  ['a code of 65 characters', station({ code: 'S'.repeat(65) }), '/stations/0/code'],
  ['a code of a million characters', station({ code: 'S'.repeat(1_000_000) }), '/stations/0/code'],
  ['NUL in a code', station({ code: 'S\u0000' }), '/stations/0/code'],
  ['half a character in a code', station({ code: 'S\ud800' }), '/stations/0/code'],
  ['NUL in a text', { parts: [{ number: 'P', description: 'a\u0000' }] }, '/parts/0/description'],
  ['half a character in a text', { parts: [{ number: 'P', description: '\udfff' }] }, '/parts/0/description'],
  [
    'a text of 2,001 characters',
    { parts: [{ number: 'P', description: 'a'.repeat(2001) }] },
    '/parts/0/description',
  ],
  ['a floor life that is none', { parts: [{ number: 'P', floorLife: '7' }] }, '/parts/0/floorLife'],
  ['a time zone that is none', { site: { code: 'T', timeZone: 'Mars/Base' } }, '/site/timeZone'],
  ['NUL in a time zone', { site: { code: 'T', timeZone: 'UTC\u0000' } }, '/site/timeZone'],
  ['a step that is no number', step({ step: '10' }), '/products/0/route/0/step'],
  ['a negative step', step({ step: -1 }), '/products/0/route/0/step'],
  ['half a step', step({ step: 1.5 }), '/products/0/route/0/step'],
  ['no attempt', step({ attempts: 0 }), '/products/0/route/0/attempts'],
  ['more than all as a sample', step({ sample: 1.01 }), '/products/0/route/0/sample'],
  ['a pattern that does not close', product({ serialPattern: '(' }), '/products/0/serialPattern'],
  ['a pattern that looks ahead', product({ serialPattern: '(?=W)' }), '/products/0/serialPattern'],
  ['a pattern that looks back', product({ serialPattern: '(W)\\1' }), '/products/0/serialPattern'],
  [
    'a pattern that explodes',
    product({ serialPattern: '((W{100}){100}){100}' }),
    '/products/0/serialPattern',
  ],
  ['NUL in a pattern', product({ serialPattern: 'W\u0000' }), '/products/0/serialPattern'],
  ['half a character in a pattern', product({ serialPattern: 'W\ud800' }), '/products/0/serialPattern'],
  ['a BOM line of nothing', bom({ positions: ['C1'] }), '/products/0/bom/0/part'],
  ['a BOM line of two things', bom({ part: 'P', product: 'Q' }), '/products/0/bom/0/part'],
  ['a slot without its station', bom({ part: 'P', slot: 'F' }), '/products/0/bom/0/station'],
  ['a station without its slot', bom({ part: 'P', station: 'S' }), '/products/0/bom/0/slot'],
  ['a sub-assembly in a slot', bom({ product: 'Q', station: 'S', slot: 'F' }), '/products/0/bom/0/slot'],
];

describe('a bad plant file', () => {
  it.each(BAD_PLANTS)('is refused with a pointer: %s', async (_, document, pointer) => {
    const problem = await problemOf(await put(document), 400);
    expect(pointersOf(problem)).toContain(pointer);
  });

  it('changes nothing, however much of it is good', async () => {
    const before = await getJson('/api/plant');
    const good = { number: `${MARK}-good` };
    const problem = await problemOf(await put({ parts: [good, { number: '' }] }), 400);
    expect(pointersOf(problem)).toEqual(['/parts/1/number']);
    expect(await getJson('/api/plant')).toEqual(before);
  });

  it('of a thousand faults tells a hundred', async () => {
    const parts = Array.from({ length: 1000 }, () => ({ number: '' }));
    expect(pointersOf(await problemOf(await put({ parts }), 400))).toHaveLength(100);
  });

  it('may be large when it is good', async () => {
    const parts = Array.from({ length: 20_000 }, (_, index) => ({ number: `${MARK}-P${index}` }));
    const response = await put({ parts });
    expect(response.status).toBe(200);
    await response.arrayBuffer();
  });
});

/** Bodies that are no JSON document of ours, for either route that takes a large one. */
const BAD_BODIES: [title: string, body: string | Uint8Array<ArrayBuffer>, status: number][] = [
  ['nothing', '', 400],
  ['spaces', '   ', 400],
  ['a truncated document', '{"events":[{"id":"0198c0de-0000-7000-8000-0000000000', 400],
  ['a document and more', '{"events":[]} {}', 400],
  ['a word', 'undefined', 400],
  ['a number that is none', '{"events":[NaN]}', 400],
  ['bytes that are not UTF-8', new Uint8Array([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x7d]), 400],
  ['a tower of lists', '['.repeat(100_000), 400],
  ['a tower of objects', '{"a":'.repeat(100_000), 400],
  ['five MiB of spaces', ' '.repeat(5 * MIB), 413],
  ['five MiB of one text', `{"events":["${'a'.repeat(5 * MIB)}"]}`, 413],
];

describe.each([
  ['PUT /api/plant', putText],
  ['POST /api/events', postText],
])('a bad body for %s', (_, sendText) => {
  it.each(BAD_BODIES)('is a problem: %s', async (title, body, status) => {
    const problem = await problemOf(await sendText(body), status);
    if (status === 400) expect(pointersOf(problem)).toEqual(['']);
    expect(title).not.toBe('');
  });

  it('of exactly 4 MiB is read, and one byte more is not', async () => {
    const frame = '{"colour":""}'.length;
    const body = (size: number) => `{"colour":"${'a'.repeat(size - frame)}"}`;
    expect(pointersOf(await problemOf(await sendText(body(4 * MIB)), 400))).toContain('/colour');
    await problemOf(await sendText(body(4 * MIB + 1)), 413);
  });

  it('of another type or encoding is 415', async () => {
    await problemOf(await sendText('<events/>', { 'content-type': 'application/xml' }), 415);
    await problemOf(await sendText('{}', { 'content-encoding': 'gzip' }), 415);
  });
});

describe('a bad list of events', () => {
  it.each([
    ['no list', {}, '/events'],
    ['null', { events: null }, '/events'],
    ['an empty list', { events: [] }, '/events'],
    ['1001 events', { events: Array.from({ length: 1001 }, () => ({})) }, '/events'],
    ['a key beside it', { events: [{}], dryRun: true }, '/dryRun'],
    ['a list without its object', [{}], ''],
  ])('is refused whole: %s', async (_, document, pointer) => {
    expect(pointersOf(await problemOf(await post('/api/events', document), 400))).toContain(pointer);
  });

  it('of 1000 is taken', async () => {
    const [unit = ''] = line.units;
    const events = Array.from({ length: 1000 }, () => line.say.removed(unit, 'C9'));
    const results = await send(...events);
    expect(new Set(results.map(({ outcome }) => outcome))).toEqual(new Set(['recorded']));
  });
});

describe('a bad event', () => {
  const all = [...REFUSED_EVENTS.byShapeAlone, ...REFUSED_EVENTS.byMeaning];

  it('is refused with pointers, each of them, and its neighbours are recorded', async () => {
    const [unit = ''] = line.units;
    const [before, after] = [line.say.removed(unit, 'C8'), line.say.removed(unit, 'C8')];
    const results = await send(before, ...all.map(({ event }) => event), after);
    expect([results[0]?.outcome, results.at(-1)?.outcome]).toEqual(['recorded', 'recorded']);
    all.forEach(({ title, pointer }, index) => {
      const refusal = results[index + 1]?.refusal;
      expect({ title, refusal }).toMatchObject({
        title,
        refusal: {
          code: 'malformed',
          errors: expect.arrayContaining([
            expect.objectContaining({ pointer: `/events/${index + 1}${pointer}` }),
          ]),
        },
      });
    });
  });

  it('with a key that is no key of any object is refused', async () => {
    const { body, ...envelope } = line.say.signed(line.units[0] ?? '');
    const inBody = JSON.stringify(body).replace('{', '{"__proto__":{"isAdmin":true},');
    const inEnvelope = JSON.stringify({ ...envelope, body }).replace('{', '{"__proto__":{"gate":"record"},');
    const text = `{"events":[${JSON.stringify({ ...envelope, body: 0 }).replace('"body":0', `"body":${inBody}`)},${inEnvelope}]}`;
    const response = await postText(text);
    const answer: unknown = await response.json();
    expect(answer).toMatchObject({
      results: [
        { outcome: 'refused', refusal: { errors: [{ pointer: '/events/0/body/__proto__' }] } },
        { outcome: 'refused', refusal: { errors: [{ pointer: '/events/1/__proto__' }] } },
      ],
    });
  });

  it('with a serial of a million characters is refused in no time', async () => {
    const startMs = performance.now();
    const event = { ...line.say.signed('W'), body: { unit: 'W'.repeat(1_000_000), meaning: 'x' } };
    expect(await send(event)).toMatchObject([{ outcome: 'refused', refusal: { code: 'malformed' } }]);
    expect(performance.now() - startMs).toBeLessThan(3000);
  });

  it('with numbers beyond every number is refused, and with the largest one is not', async () => {
    const [unit = ''] = line.units;
    const event = (value: string) =>
      `{"events":[{"id":"${numberedId(Number(value) > 1 ? 1 : 2, 0xbad)}","type":"unit.processed","at":"2026-03-02T20:00:00Z",
        "gate":"record","station":"${line.placer}","body":{"unit":"${unit}","result":"pass",
        "readings":[{"name":"v","value":${value}}]}}]}`;
    expect(await (await postText(event('1e400'))).json()).toMatchObject({
      results: [{ refusal: { errors: [{ pointer: '/events/0/body/readings/0/value' }] } }],
    });
    for (const value of ['1.7976931348623157e308', '5e-324'])
      expect(await (await postText(event(value))).json()).toMatchObject({
        results: [{ outcome: 'recorded' }],
      });
    const record = await getJson(`/api/trace/as-built?unit=${unit}`);
    const values = JSON.stringify(record).match(/"value":[^,}]+/g);
    expect(values).toEqual(expect.arrayContaining(['"value":1.7976931348623157e+308', '"value":5e-324']));
  });
});

describe('hostile words', () => {
  const WORDS = [
    "'; drop table log.event; --",
    '$1::text',
    '=cmd|/C calc',
    '<script>alert(1)</script>',
    '__proto__',
    'constructor',
    '../../etc/passwd',
    '%00%0d%0a',
    '漢字😀é',
    '{{7*7}}#{7*7}',
    '\\u0000',
    'null',
  ];

  it('are codes and texts like any other, and come back as they went in', async () => {
    const events = WORDS.map((unit) =>
      line.say.started({ unit, product: unit, revision: unit, order: unit }, { gate: 'record' }),
    );
    const returned = WORDS.map((unit) =>
      line.say.make('unit.returned', { unit, symptom: `${unit}\n${unit}` }, { gate: 'record' }),
    );
    for (const { outcome } of await send(...events, ...returned)) expect(outcome).toBe('recorded');
    for (const unit of WORDS)
      expect(await getJson(`/api/trace/as-built?unit=${encodeURIComponent(unit)}`)).toMatchObject({
        unit,
        product: unit,
        place: { kind: 'returned' },
        events: [{ body: { order: unit } }, { body: { symptom: `${unit}\n${unit}` } }],
      });
  });

  it('find nothing in questions', async () => {
    for (const word of WORDS)
      expect(await getJson(`/api/trace/where-used?item=${encodeURIComponent(word)}`)).toMatchObject({
        counts: { units: 0 },
        units: [],
      });
  });
});

describe('a bad question', () => {
  it.each([
    ['', ''],
    ['?place=stock', ''],
    ['?item=R&colour=red', '/colour'],
    ['?item=R&item=S', '/item'],
    ['?item=', '/item'],
    ['?item=%00', '/item'],
    ['?item=%ed%a0%80', ''],
    ['?item=R&limit=0', '/limit'],
    ['?item=R&limit=5001', '/limit'],
    ['?item=R&limit=1.5', '/limit'],
    ['?item=R&limit=many', '/limit'],
    ['?item=R&place=moon', '/place/0'],
    ['?item=R&relation=contains,loves', '/relation/1'],
    ['?item=R&certainty=maybe', '/certainty/0'],
    ['?item=R&from=yesterday', '/from'],
    ['?item=R&to=2026-03-02', '/to'],
  ])('%s is refused with a pointer', async (query, pointer) => {
    const response = await ask(`/api/trace/where-used${query}`);
    // A text that is not UTF-8 becomes replacement characters on its way: a code that nothing has.
    if (query.includes('%ed')) return expect(response.status).toBe(200);
    const csv = await ask(`/api/trace/where-used${query}`, { headers: { accept: 'text/csv' } });
    for (const each of [response, csv])
      expect(pointersOf(await problemOf(each, 400)).join()).toContain(pointer);
    return undefined;
  });
});
