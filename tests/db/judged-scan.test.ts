import { expect, it } from 'vitest';
import { GET } from '@/app/api/scan/route';
import { judgedScanSchema, scanPictureSchema } from '@/lib/domain/station/scan-picture';
import { checkUnit } from '@/lib/server/check-unit';
import { databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';
import { openFloor } from '@/tests/support/gate-floor';

databaseWithPeople();

async function scanned(query: Record<string, string>): Promise<unknown> {
  const headers = { authorization: `Bearer ${TEST_API_TOKEN}` };
  const url = `http://reelkin.test/api/scan?${new URLSearchParams(query)}`;
  const response = await GET(new Request(url, { headers }));
  expect(response.status).toBe(200);
  return await response.json();
}

it('a station gets by one request what is known of a unit and what the gate says, as by two', async () => {
  const { place, print, printer: operator, start, mustSend, say, name } = await openFloor();
  const [unit, held] = [name('W-go'), name('W-held')];
  const waiting = [unit, held].flatMap((each) => [start(each), say.passed(each, print)]);
  await mustSend(...waiting, say.held('unit', held));
  for (const [code, go] of [
    [unit, true],
    [held, false],
    [name('W-nobody'), false],
  ] as const) {
    const { verdict, ...scan } = judgedScanSchema.parse(await scanned({ code, station: place, operator }));
    expect(verdict).toEqual(await checkUnit({ unit: code, station: place, operator }));
    expect(verdict.go, code).toBe(go);
    expect(scan).toEqual(scanPictureSchema.parse(await scanned({ code, station: place })));
  }
});

it('without an operator the gate is not asked', async () => {
  expect(await scanned({ code: 'U-1', station: 'S-1' })).not.toHaveProperty('verdict');
  expect(await scanned({ code: 'U-1', operator: 'op-1' })).not.toHaveProperty('verdict');
});
