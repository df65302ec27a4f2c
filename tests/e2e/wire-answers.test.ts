import { beforeAll, describe, expect, it } from 'vitest';
import { whereUsedAnswerSchema } from '@/lib/domain/genealogy/answer';
import { freshEventMaker, seedLine, wireClient } from '@/tests/support/wire-client';

const client = await wireClient();
const { ask, send } = client;
const MARK = 'WA';
const UNIT_COUNT = 1234;
const COLUMNS =
  'unit product revision certainty relation place station container shipment customer through'.split(' ');
let line: Awaited<ReturnType<typeof seedLine>>;

beforeAll(async () => {
  line = await seedLine(client, MARK, UNIT_COUNT);
  const { say, units } = line;
  const record = { gate: 'record' } as const;
  const [shipped, packed, returned, scrapped, repaired] = units;
  if (!shipped || !packed || !returned || !scrapped || !repaired) throw new Error('too few units');
  const results = await send(
    say.packed(shipped, `${MARK}-CT1`, record),
    say.make(
      'container.shipped',
      { container: `${MARK}-CT1`, shipment: `${MARK}-SH1`, customer: '=HYPERLINK("x"), "quoted"\nand more' },
      record,
    ),
    say.packed(packed, `${MARK}-CT2`, record),
    say.returned(returned, record),
    say.scrapped(scrapped, record),
    say.removed(repaired, 'C1', record),
  );
  for (const { outcome } of results) expect(outcome).toBe('recorded');
});

async function whereUsed(query: string) {
  const response = await ask(`/api/trace/where-used?${query}`);
  const answer: unknown = await response.json();
  expect({ status: response.status, answer }).toMatchObject({ status: 200 });
  return whereUsedAnswerSchema.parse(answer);
}

async function csvOf(query: string, accept = 'text/csv') {
  const response = await ask(`/api/trace/where-used?${query}`, { headers: { accept } });
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toMatch(/^text\/csv; charset=utf-8/);
  return response;
}

/** Rows of a CSV text with a header, as objects. */
function readTable(text: string): Record<string, string>[] {
  const [header = [], ...rows] = readCsv(text);
  expect(header).toEqual(expect.arrayContaining(COLUMNS));
  return rows.map((row) => Object.fromEntries(header.map((name, index) => [name, row[index] ?? ''])));
}

/** Rows of a CSV text (RFC 4180) as their cells: written here from the standard, not from the writer. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const cell = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n|$)/y;
  while (cell.lastIndex < text.length) {
    const match = cell.exec(text);
    if (match === null) throw new Error(`not CSV at ${cell.lastIndex}`);
    const [, value = '', end = ''] = match;
    row.push(value.startsWith('"') ? value.slice(1, -1).replaceAll('""', '"') : value);
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

describe('paging', () => {
  it('gives exactly the whole sorted set, whatever the page size, with the same counts on every page', async () => {
    const whole = await whereUsed(`item=${line.reel}&limit=5000`);
    expect(whole.next).toBeNull();
    expect(whole.counts.units).toBe(UNIT_COUNT);
    const names = whole.units.map(({ unit }) => unit);
    expect(names).toEqual([...names].sort());
    expect(new Set(names)).toEqual(new Set(line.units));
    for (const limit of [1000, 617, 333]) {
      const collected = [];
      let cursor: string | null = '';
      for (let page = 0; cursor !== null && page < 10; page += 1) {
        const answer = await whereUsed(
          `item=${line.reel}&limit=${limit}${cursor === '' ? '' : `&cursor=${encodeURIComponent(cursor)}`}`,
        );
        expect(answer.counts).toEqual(whole.counts);
        expect(answer.units.length).toBeLessThanOrEqual(limit);
        collected.push(...answer.units);
        cursor = answer.next;
      }
      expect(cursor).toBeNull();
      expect(collected).toEqual(whole.units);
    }
  });

  it('has 500 units a page when nothing is said, and pages of one', async () => {
    expect((await whereUsed(`item=${line.reel}`)).units.length).toBe(500);
    const [first] = (await whereUsed(`item=${line.reel}&limit=1`)).units;
    const second = await whereUsed(`item=${line.reel}&limit=1&cursor=${first?.unit}`);
    expect([first?.unit, second.units[0]?.unit]).toEqual(line.units.slice(0, 2));
  });

  it('ends after the last unit, and goes on from a unit that is not in the answer', async () => {
    expect(await whereUsed(`item=${line.reel}&cursor=${line.units.at(-1)}`)).toMatchObject({
      units: [],
      next: null,
      counts: { units: UNIT_COUNT },
    });
    expect((await whereUsed(`item=${line.reel}&cursor=${MARK}-W000005x&limit=1`)).units[0]?.unit).toBe(
      line.units[6],
    );
  });
});

describe('filters', () => {
  it('split the whole by place, relation and certainty, and leave nothing out', async () => {
    const whole = await whereUsed(`item=${line.reel}&limit=5000`);
    const places = Object.keys(whole.counts.byPlace);
    const parts = await Promise.all(
      places.map((place) => whereUsed(`item=${line.reel}&limit=5000&place=${place}`)),
    );
    parts.forEach((part, index) => {
      const place = places[index] ?? '';
      expect({ place, units: part.counts.units }).toEqual({
        place,
        units: whole.counts.byPlace[place as keyof typeof whole.counts.byPlace],
      });
      for (const unit of part.units) expect(unit.place?.kind).toBe(place);
    });
    expect(parts.flatMap(({ units }) => units.map(({ unit }) => unit)).sort()).toEqual(line.units);
    expect(whole.counts).toMatchObject({
      contains: UNIT_COUNT - 1,
      formerly: 1,
      touched: 0,
      certain: UNIT_COUNT,
      possible: 0,
      byPlace: { shipped: 1, container: 1, returned: 1, scrapped: 1, station: 0, stock: UNIT_COUNT - 4 },
    });
  });

  it('take several values with commas, and combine', async () => {
    const [shipped, packed, , , repaired] = line.units;
    const units = async (query: string) =>
      (await whereUsed(`item=${line.reel}&${query}`)).units.map(({ unit }) => unit);
    expect(await units('place=shipped,container')).toEqual([shipped, packed]);
    expect(await units('place=stock&relation=formerly')).toEqual([repaired]);
    expect(await units('relation=formerly,touched&certainty=possible')).toEqual([]);
  });

  it('ask for a lot, a part, a station, an operator and a time', async () => {
    const { say } = line;
    const from = encodeURIComponent(say.minute(8));
    const to = encodeURIComponent(say.minute(10));
    const count = async (query: string) => (await whereUsed(query)).counts.units;
    expect(await count(`lot=${MARK}-L1`)).toBe(UNIT_COUNT);
    expect(await count(`part=${MARK}-C-100N`)).toBe(UNIT_COUNT);
    expect(await count(`station=${line.placer}`)).toBe(UNIT_COUNT);
    expect(await count(`item=${line.reel}&from=${from}&to=${to}`)).toBe(1);
    expect(await count(`station=${line.placer}&from=${from}&to=${to}`)).toBe(1);
    expect(await count(`item=${line.reel}&station=elsewhere`)).toBe(0);
    expect(await count(`item=${line.reel}&operator=nobody`)).toBe(0);
    expect((await whereUsed(`item=${line.stencil}&limit=1`)).units[0]?.relation).toBe('touched');
  });
});

describe('CSV', () => {
  it('is the whole answer with a header, whatever the limit', async () => {
    const response = await csvOf(`item=${line.reel}&limit=5`);
    const text = await response.text();
    const rows = readTable(text);
    expect(rows.map(({ unit }) => unit)).toEqual(line.units);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(rows[1]).toMatchObject({
      unit: line.units[1],
      product: `${MARK}-WX4`,
      revision: 'C',
      certainty: 'certain',
      relation: 'contains',
      place: 'container',
      station: '',
      container: `${MARK}-CT2`,
      shipment: '',
      customer: '',
      through: '',
    });
  });

  it('keeps filters, quotes what needs it, and lets no cell become a formula', async () => {
    const rows = readTable(await (await csvOf(`item=${line.reel}&place=shipped`)).text());
    expect(rows.map(({ customer }) => customer)).toEqual([`'=HYPERLINK("x"), "quoted"\nand more`]);
  });

  it('is given to those who ask for it, among other types too, and to nobody else', async () => {
    for (const accept of ['text/csv', 'TEXT/CSV; charset=utf-8', 'text/html, text/csv;q=0.9'])
      await (await csvOf(`item=${line.reel}`, accept)).body?.cancel();
    for (const accept of ['*/*', 'application/json', 'text/plain', 'text/csvx']) {
      const response = await ask(`/api/trace/where-used?item=${line.reel}`, { headers: { accept } });
      expect(response.headers.get('content-type')).toMatch(/^application\/json/);
      await response.body?.cancel();
    }
  });

  it('of nothing is the header alone', async () => {
    const text = await (await csvOf('item=nothing')).text();
    expect([readTable(text), text.split('\r\n').length]).toEqual([[], 2]);
  });

  it('comes in pieces, and a reader that leaves takes nothing with it', async () => {
    for (let round = 0; round < 8; round += 1) {
      const reader = (await csvOf(`item=${line.reel}`)).body?.getReader();
      const first = await reader?.read();
      expect(first?.value?.byteLength).toBeGreaterThan(0);
      await reader?.cancel();
    }
    expect((await (await csvOf(`item=${line.reel}`)).text()).split('\r\n').length).toBe(UNIT_COUNT + 2);
    await client.expectAlive();
  });
});

describe('what is owed', () => {
  it('makes an answer incomplete and names the device', async () => {
    const say = freshEventMaker();
    const device = `${MARK}-tab`;
    await send(say.removed(line.units[0] ?? '', 'C7', { gate: 'record', device, deviceSeq: 3 }));
    const owing = await whereUsed(`item=${line.reel}&limit=1`);
    expect(owing.complete).toBe(false);
    expect(owing.owing).toContainEqual({ device, missing: [[1, 2]], lastSeenAt: expect.any(String) });
    await send(
      ...[1, 2].map((deviceSeq) =>
        say.removed(line.units[0] ?? '', 'C7', { gate: 'record', device, deviceSeq }),
      ),
    );
    const after = await whereUsed(`item=${line.reel}&limit=1`);
    expect(after.owing.filter((each) => each.device === device)).toEqual([]);
    expect(after.complete).toBe(after.owing.length === 0);
  });
});
