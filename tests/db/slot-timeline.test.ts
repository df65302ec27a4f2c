import { beforeAll, expect, it } from 'vitest';
import { GET } from '@/app/api/trace/slot-timeline/route';
import { slotTimelineAnswerSchema } from '@/lib/domain/genealogy/slot-timeline';
import { putPlant } from '@/lib/server/put-plant';
import { readSlotTimeline } from '@/lib/server/read-slot-timeline';
import { databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';
import { eventMaker } from '@/tests/support/event-maker';
import { recordHistory } from '@/tests/support/record-history';

databaseWithPeople();

const make = eventMaker();
const record = { gate: 'record' } as const;
const STATION = 'PLACE-1';
const at = (minute: number) => ({ ...record, station: STATION, at: make.minute(minute) });
const PLANT = {
  stations: [
    {
      code: STATION,
      operation: 'place',
      slots: [
        { name: '1', holds: 'reel' },
        { name: '2', holds: 'reel' },
      ],
    },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      route: [{ step: 10, operation: 'place' }],
      bom: [{ part: 'P-1', positions: ['U7'], station: STATION, slot: '1' }],
    },
  ],
};

beforeAll(async () => {
  expect(await putPlant(PLANT, 'test')).toMatchObject({ ok: true });
  const results = await recordHistory([
    make.received({ item: 'R-1', kind: 'reel', part: 'P-1' }, record),
    make.make('item.mounted', { item: 'R-1', slot: '1' }, at(10)),
    make.make('item.mounted', { item: 'R-2', slot: '1' }, { ...at(60), uncertaintyMs: 120_000 }),
    make.make('item.spliced', { from: 'R-2', to: 'R-3', slot: '1', greyUnits: 2 }, at(100)),
    make.make('item.mounted', { item: 'R-9', slot: 'X' }, at(30)),
    make.make('item.unmounted', { item: 'R-9', slot: 'X' }, at(40)),
    // Only units that draw from the slot use up a grey zone.
    ...[105, 106].map((minute) =>
      make.started({ unit: `U-${minute}`, product: 'WX4', revision: 'C' }, { ...record, at: make.minute(1) }),
    ),
    ...[20, 70, 105, 106, 107].map((minute) =>
      make.make(
        'unit.processed',
        { unit: `U-${minute}`, result: minute === 70 ? 'fail' : 'pass' },
        at(minute),
      ),
    ),
  ]);
  expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
});

const timeline = async (from: number, to: number) => {
  const answer = await readSlotTimeline({ station: STATION, from: make.minute(from), to: make.minute(to) });
  return slotTimelineAnswerSchema.parse(answer);
};

it('tells for each slot what stood there, certainly and possibly; empty slots and unknown ones too', async () => {
  const { slots, complete, barsLeft } = await timeline(0, 99);
  expect({ complete, barsLeft }).toEqual({ complete: true, barsLeft: 0 });
  expect(slots.map(({ slot, bars }) => [slot, bars.map(({ item }) => item)])).toEqual([
    ['1', ['R-1', 'R-2']],
    ['2', []],
    ['X', ['R-9']],
  ]);
  expect(slots[0]?.bars[0]).toMatchObject({
    part: 'P-1',
    from: make.minute(10),
    to: make.minute(60),
    certain: { from: make.minute(10), to: make.minute(58) },
    possible: { from: make.minute(10), to: make.minute(62) },
    splice: null,
  });
  expect(slots[0]?.bars[1]).toMatchObject({
    certain: { from: make.minute(62) },
    possible: { from: make.minute(58) },
  });
});

it('shows both sides of a splice as possible while its grey zone lasts', async () => {
  const [slot] = (await timeline(90, 120)).slots;
  const [before, after] = slot?.bars ?? [];
  expect(before?.item).toBe('R-2');
  expect(after).toMatchObject({ item: 'R-3', to: null, possible: { from: make.minute(100), to: null } });
  const grey = after?.splice?.greyUntil ?? '';
  expect(Date.parse(grey)).toBeGreaterThanOrEqual(Date.parse(make.minute(106)));
  expect(Date.parse(grey)).toBeLessThan(Date.parse(make.minute(107)));
  expect(before?.possible.to).toBe(grey);
  expect(after?.certain?.from).toBe(grey);
});

it('leaves out what stood there before and after, and keeps what only reaches in', async () => {
  const slots = (await timeline(61, 99)).slots;
  expect(slots.flatMap(({ bars }) => bars.map(({ item }) => item))).toEqual(['R-1', 'R-2']);
  expect((await timeline(63, 99)).slots.flatMap(({ bars }) => bars.map(({ item }) => item))).toEqual(['R-2']);
});

it('tells few units one by one and many as a density', async () => {
  const { passes } = await timeline(15, 106);
  expect(passes).toMatchObject({ kind: 'units', count: 4 });
  if (passes.kind === 'units')
    expect(passes.units.map(({ unit, result }) => [unit, result])).toEqual([
      ['U-20', 'pass'],
      ['U-70', 'fail'],
      ['U-105', 'pass'],
      ['U-106', 'pass'],
    ]);
  const many = Array.from({ length: 700 }, (_, index) =>
    make.make('unit.processed', { unit: `M-${index}`, result: 'pass' }, at(200 + (index % 100))),
  );
  await recordHistory(many, 700);
  const dense = (await timeline(200, 300)).passes;
  expect(dense).toMatchObject({ kind: 'density', count: 700 });
  if (dense.kind === 'density') expect(dense.counts.reduce((sum, count) => sum + count, 0)).toBe(700);
});

it('refuses a time that does not end after it begins or is too long, and a station that nobody knows', async () => {
  const ask = async (query: Record<string, string>) => {
    const headers = { authorization: `Bearer ${TEST_API_TOKEN}` };
    const address = `http://reelkin.test/api/trace/slot-timeline?${new URLSearchParams(query)}`;
    return (await GET(new Request(address, { headers }))).status;
  };
  const [from, to] = [make.minute(10), make.minute(20)];
  expect(await ask({ station: STATION, from, to })).toBe(200);
  expect(await ask({ station: STATION, from: to, to: from })).toBe(400);
  expect(await ask({ station: STATION, from, to: make.minute(10 + 32 * 1440) })).toBe(400);
  expect(await ask({ station: 'NOWHERE', from, to })).toBe(404);
});
