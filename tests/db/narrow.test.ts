import { beforeAll, describe, expect, it } from 'vitest';
import { POST } from '@/app/api/trace/narrow/route';
import { GET } from '@/app/api/trace/narrow.csv/route';
import { narrowAnswerSchema } from '@/lib/domain/genealogy/narrow-answer';
import { putPlant } from '@/lib/server/put-plant';
import { databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';
import { eventMaker } from '@/tests/support/event-maker';
import { recordHistory } from '@/tests/support/record-history';

databaseWithPeople();

const make = eventMaker();
const record = { gate: 'record' } as const;
const PLANT = {
  stations: [
    {
      code: 'PLACE-1',
      line: 'L1',
      operation: 'place',
      slots: [
        { name: '1', holds: 'reel' },
        { name: 'profile', holds: 'profile' },
      ],
    },
    { code: 'TEST-1', line: 'L1', operation: 'test' },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      route: [{ step: 10, operation: 'place' }],
      bom: [{ part: 'P-1', positions: ['U7'], station: 'PLACE-1', slot: '1' }],
    },
  ],
};

// Eight units on one reel; the fourth passes while the reel's clock leaves room for the one before it.
const units = Array.from({ length: 8 }, (_, index) => `U-${index + 1}`);
const [first = '', second = '', third = ''] = units;

beforeAll(async () => {
  expect(await putPlant(PLANT, 'test')).toMatchObject({ ok: true });
  const results = await recordHistory([
    ...units.map((unit) =>
      make.started({ unit, product: 'WX4', revision: 'C', order: 'WO-1', panel: `PN-${unit}` }, record),
    ),
    make.received({ item: 'R-1', kind: 'reel', part: 'P-1' }, record),
    make.mounted('R-1', 'PLACE-1', '1', record),
    ...units.map((unit) =>
      make.passed(unit, 'PLACE-1', { ...record, ...(unit === 'U-8' ? { uncertaintyMs: 600_000 } : {}) }),
    ),
    make.removed(first, 'U7', record),
    make.removed(second, 'U7', record),
    make.failed(third, 'TEST-1', record),
    make.passed('U-4', 'TEST-1', record, { result: 'fail', defects: [{ code: 'OPEN', position: 'U7' }] }),
    make.joined(first, 'BOX-1', record),
    make.joined(third, 'BOX-1', record),
    make.passed('BOX-1', 'TEST-1', record),
  ]);
  expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
});

const headers = { authorization: `Bearer ${TEST_API_TOKEN}`, 'content-type': 'application/json' };

async function post(body: object, more: Record<string, string> = {}): Promise<Response> {
  const request = { method: 'POST', headers: { ...headers, ...more }, body: JSON.stringify(body) };
  return POST(new Request('http://reelkin.test/api/trace/narrow', request));
}

async function ask(conditions: object[], page: object = {}) {
  const response = await post({ conditions, ...page });
  expect(response.status).toBe(200);
  return narrowAnswerSchema.parse(await response.json());
}

const REEL = { must: true, kind: 'used', item: 'R-1' };
const NOT_REPAIRED = { must: false, kind: 'repaired', position: 'U7' };

describe('narrowing', () => {
  it('removes what certainly was repaired, and never what only may have been', async () => {
    const { conditions, counts, units: left } = await ask([REEL, NOT_REPAIRED]);
    expect(conditions.map(({ condition: _, ...does }) => does)).toEqual([
      { own: { certain: 8, possible: 1 }, after: { certain: 8, possible: 1 }, removed: null, spared: 1 },
      { own: { certain: 2, possible: 1 }, after: { certain: 5, possible: 2 }, removed: 2, spared: 1 },
    ]);
    expect(counts).toMatchObject({ certain: { units: 5 }, possible: { units: 2 } });
    expect(left.map(({ unit }) => unit)).toEqual(['BOX-1', 'U-3', 'U-4', 'U-5', 'U-6', 'U-7', 'U-8']);
    // One board in the box was repaired and the other one was not: the box stays, and says why.
    expect(left.find(({ unit }) => unit === 'BOX-1')?.doubts).toEqual([{ condition: 1, because: ['inner'] }]);
    expect(left.find(({ unit }) => unit === 'U-8')?.doubts).toEqual([{ condition: 0, because: ['clock'] }]);
  });

  it('gives a page after the other of the group that is asked for, with the counts of both', async () => {
    const page = await ask([REEL], { limit: 3, certainty: 'certain' });
    expect(page.units.map(({ unit }) => unit)).toEqual(['BOX-1', 'U-1', 'U-2']);
    expect(page.next).toBe('U-2');
    const rest = await ask([REEL], { limit: 3, certainty: 'certain', cursor: 'U-2' });
    expect(rest.units.map(({ unit }) => unit)).toEqual(['U-3', 'U-4', 'U-5']);
    expect(rest.counts).toEqual(page.counts);
  });

  it.each([
    [{ kind: 'processed', operation: 'test', result: 'fail' }, ['BOX-1', 'U-3', 'U-4']],
    [{ kind: 'processed', station: 'TEST-1', result: 'pass' }, ['BOX-1']],
    [{ kind: 'defect', code: 'OPEN', position: 'U7' }, ['U-4']],
    [{ kind: 'defect', code: 'OPEN', position: 'U8' }, []],
    [{ kind: 'repaired', change: 'removed' }, ['BOX-1', 'U-1', 'U-2']],
    [{ kind: 'repaired', change: 'installed' }, []],
    [{ kind: 'started', panel: 'PN-U-5' }, ['U-5', 'BOX-1']],
    [{ kind: 'product', product: 'NONE' }, ['BOX-1']],
  ])('%j keeps %j', async (condition, expected) => {
    const answer = await ask([{ must: true, ...condition }]);
    expect(answer.units.map(({ unit }) => unit)).toEqual([...expected].sort());
  });

  it('cannot exclude that a unit whose start was never recorded is of the product', async () => {
    const { units: left } = await ask([{ must: true, kind: 'product', product: 'WX4', revision: 'C' }]);
    expect(left).toHaveLength(9);
    expect(left[0]).toMatchObject({
      unit: 'BOX-1',
      certainty: 'possible',
      doubts: [{ condition: 0, because: ['unstarted'] }],
    });
  });

  it('writes the question, the doubts and the completeness into the CSV', async () => {
    const posted = await (await post({ conditions: [REEL, NOT_REPAIRED] }, { accept: 'text/csv' })).text();
    const lines = posted.trim().split('\r\n');
    expect(lines[0]).toMatch(
      /^unit,product,revision,certainty,held,.*,because,1\. must used item=R-1,2\. must not repaired position=U7,complete as of 20/,
    );
    expect(lines).toHaveLength(8);
    expect(lines[1]).toMatch(/^BOX-1,,,possible,yes,station,TEST-1,,,,2: inner,certain,possible,yes$/);
    const query = new URLSearchParams({ conditions: JSON.stringify([REEL, NOT_REPAIRED]) });
    const linked = await GET(new Request(`http://reelkin.test/api/trace/narrow.csv?${query}`, { headers }));
    expect((await linked.text()).split('\r\n').slice(1)).toEqual(posted.split('\r\n').slice(1));
  });

  it.each([
    [{ conditions: [] }, '/conditions', 'too_small'],
    [{ conditions: [NOT_REPAIRED] }, '/conditions', 'no_must'],
    [{ conditions: Array(13).fill(REEL) }, '/conditions', 'too_big'],
    [{ conditions: [{ must: true, kind: 'used', station: 'S' }] }, '/conditions/0', 'no_condition'],
    [{ conditions: [{ must: true, kind: 'moon' }] }, '/conditions/0/kind', 'invalid_union'],
    [{ conditions: [{ ...REEL, colour: 'red' }] }, '/conditions/0/colour', 'unknown_key'],
    [{ conditions: [{ ...REEL, from: 'noon' }] }, '/conditions/0/from', 'not_a_time'],
    [
      { conditions: [{ must: true, kind: 'place', place: 'stock', station: 'S' }] },
      '/conditions/0/station',
      'no_station_there',
    ],
  ])('points at what is wrong with %j', async (body, pointer, code) => {
    const response = await post(body);
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({
      errors: expect.arrayContaining([expect.objectContaining({ pointer, code })]),
    });
  });
});
