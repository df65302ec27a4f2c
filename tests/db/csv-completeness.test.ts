import { expect, it } from 'vitest';
import { GET } from '@/app/api/trace/where-used.csv/route';
import { databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';
import { eventMaker } from '@/tests/support/event-maker';
import { recordHistory } from '@/tests/support/record-history';

databaseWithPeople();

const make = eventMaker();

async function linesOf(item: string): Promise<string[]> {
  const headers = { authorization: `Bearer ${TEST_API_TOKEN}` };
  const response = await GET(
    new Request(`http://reelkin.test/api/trace/where-used.csv?item=${item}`, { headers }),
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
