import { expect, it } from 'vitest';
import { GET } from '@/app/api/trace/where-used.csv/route';
import { databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';
import { eventMaker } from '@/tests/support/event-maker';
import { recordHistory } from '@/tests/support/record-history';

databaseWithPeople();

const make = eventMaker();

async function linesOf(item: string, more: Record<string, string> = {}): Promise<string[]> {
  const headers = { authorization: `Bearer ${TEST_API_TOKEN}` };
  const query = new URLSearchParams({ item, ...more });
  const response = await GET(
    new Request(`http://reelkin.test/api/trace/where-used.csv?${query}`, { headers }),
  );
  expect(response.status).toBe(200);
  return (await response.text()).split('\r\n');
}

async function record(envelope: object): Promise<void> {
  const used = [{ item: 'L-1', positions: ['C1'] }];
  const event = make.passed('U-1', 'HAND-1', { gate: 'record', ...envelope }, { used });
  expect(await recordHistory([event])).toMatchObject([{ outcome: 'recorded' }]);
}

it('a CSV tells in its heading and in every row whether its answer is complete, also when it has no row', async () => {
  await record({ device: 'tab-1', deviceSeq: 1 });
  const [heading, row, end] = await linesOf('L-1');
  expect(heading).toMatch(/^unit,.*,through,complete as of \d{4}-[^,]*Z$/);
  expect(row).toMatch(/^U-1,.*,certain,.*,yes$/);
  expect(end).toBe('');

  await record({ device: 'tab-1', deviceSeq: 4 });
  await record({ device: 'tab, 2', deviceSeq: 2 });
  const [owingHeading, owingRow] = await linesOf('L-1');
  expect(owingHeading).toMatch(/,through,"not complete as of [^,]*Z: tab, 2 owes 1; tab-1 owes 2-3"$/);
  expect(owingRow).toMatch(/^U-1,.*,certain,.*,no$/);
  const nothing = await linesOf('NEVER');
  expect(nothing).toHaveLength(2);
  expect(nothing[0]).toMatch(/not complete as of/);
});

it('a CSV has the same rows whether PostgreSQL wrote them or they were read whole for a moment', async () => {
  const station = { station: 'HAND-1', gate: 'record' } as const;
  const used = [{ item: 'L-2', positions: ['C1'] }];
  const units = ['=U, "1"', '-U', '@U', '＋U', 'U;2', "'U"];
  const events = [
    ...units.map((unit) => make.passed(unit, 'HAND-1', station, { used })),
    make.make('item.mounted', { item: 'L-2', slot: 'S1' }, { ...station, uncertaintyMs: 300_000 }),
    make.passed('U-9', 'HAND-1', station),
    make.joined('-U', '+OUTER', { gate: 'record' }),
    make.make('unit.packed', { unit: '@U', container: '=C' }, { gate: 'record' }),
    make.make(
      'container.shipped',
      { container: '=C', shipment: '-S', customer: 'Tarn, "Valley"' },
      { gate: 'record' },
    ),
  ];
  const results = await recordHistory(events);
  expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
  const [, ...now] = await linesOf('L-2');
  const [, ...moment] = await linesOf('L-2', { knownAt: '2999-01-01T00:00:00Z' });
  expect(now).toEqual(moment);
  const text = now.join('\n');
  for (const cell of [`"'=U, ""1"""`, "'-U", "'@U", "'＋U", "'=C", "'-S", '"Tarn, ""Valley"""', "'+OUTER"])
    expect(text).toContain(cell);
});
