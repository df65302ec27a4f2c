import { beforeAll, describe, expect, it } from 'vitest';
import { identifyCode } from '@/lib/server/identify-code';
import { previewPlant } from '@/lib/server/preview-plant';
import { putPlant } from '@/lib/server/put-plant';
import { readFloor } from '@/lib/server/read-floor';
import { readItemRecord, readLotRecord } from '@/lib/server/read-item-record';
import { readContainerRecord, readShipmentRecord } from '@/lib/server/read-packing-record';
import { readUnitRecord } from '@/lib/server/read-unit-record';
import { traceAnswer } from '@/lib/server/trace-answer';
import { eventMaker } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';
import {
  FIRST_REEL_COUNT,
  SCENE_PLANT,
  sceneHistory,
  serial,
  UNIT_COUNT,
} from '@/tests/support/scene-history';

freshDatabase();

const make = eventMaker();
const now = new Date().toISOString();
const history = sceneHistory();

beforeAll(async () => {
  expect((await putPlant(SCENE_PLANT, 'test')).ok).toBe(true);
  const held = make.held('unit', serial(2), { at: now });
  const later = [
    make.returned(serial(1), { at: now }),
    held,
    make.released(held.id, { at: now }),
    make.held('item', 'R-2', { at: now }),
    make.held('lot', 'L-7', { at: now }),
  ];
  const results = await recordHistory([...history, ...later]);
  expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
});

describe('the floor', () => {
  it('tells what runs, what is stuck and what is held, in route order', async () => {
    const { lines, places, holds, stuck, others } = await readFloor();
    expect(lines.map(({ line }) => line)).toEqual(['L1']);
    const [print, place, test] = lines[0]?.stations ?? [];
    expect([print?.station, place?.station, test?.station]).toEqual(['L1-PRINT', 'L1-PLACE', 'TEST-1']);
    expect([print?.state, place?.state, test?.state]).toEqual(['running', 'held', 'running']);
    expect(print?.lastHour.passed).toBeGreaterThanOrEqual(29);
    expect(test?.waiting).toMatchObject({ units: 1, failed: 1, held: 0 });
    expect(places).toMatchObject({ shipped: 9, returned: 1, station: UNIT_COUNT - 10 });
    expect(holds.open).toBe(2);
    expect(stuck[0]).toMatchObject({ unit: serial(11), openFailure: 'test', station: 'TEST-1' });
    expect(others).toEqual([]);
  });
});

describe('a scanned code', () => {
  it.each([
    [serial(1), ['unit']],
    ['R-1', ['item']],
    ['L-7', ['item', 'lot']],
    ['R-10K', ['part']],
    ['CT-1', ['container']],
    ['SH-1', ['shipment']],
    ['PANEL-9', ['panel']],
    ['ORDER-9', ['order']],
    ['TEST-1', ['station']],
    ['op-1', ['operator']],
    ['r-1', []],
    [' R-1', []],
    ['x'.repeat(65), []],
  ])('%s is %j', async (code, kinds) => {
    expect(await identifyCode(code)).toEqual(kinds);
  });
});

describe('where-used for a screen', () => {
  it('counts certain and possible apart, whatever is narrowed', async () => {
    const all = await traceAnswer({ item: 'R-1', limit: 10 });
    const { certain, possible } = all.counts;
    expect(certain.units + possible.units).toBeGreaterThanOrEqual(FIRST_REEL_COUNT);
    expect(possible.units).toBeGreaterThan(0);
    expect(all).toMatchObject({ shown: 'certain', next: serial(10) });
    expect(all.asked).toEqual({ certain: certain.units, possible: possible.units });
    expect(all.shipped).toEqual([{ customer: 'Northgate Rail', shipment: 'SH-1', certain: 9, possible: 0 }]);
    const returned = await traceAnswer({ item: 'R-1', limit: 10, place: ['returned'] });
    expect(returned.counts).toEqual(all.counts);
    expect(returned.units.map(({ unit }) => unit)).toEqual([serial(1)]);
    expect(returned.asked).toEqual({ certain: 1, possible: 0 });
  });

  it('shows the possible units when none is certain', async () => {
    const { certain } = (await traceAnswer({ item: 'R-1', limit: 1 })).counts;
    const doubtful = await traceAnswer({ item: 'R-1', limit: 50, certainty: ['possible'] });
    expect(doubtful.shown).toBe('possible');
    expect(doubtful.units.every(({ certainty }) => certainty === 'possible')).toBe(true);
    expect(doubtful.counts.certain).toEqual(certain);
  });
});

describe('pages of things', () => {
  it('gives a unit its standing, and its history with holds and releases', async () => {
    const failed = await readUnitRecord(serial(11));
    expect(failed?.standing).toMatchObject({ failedAt: 'test', isSigned: false });
    expect(failed?.standing.steps.map(({ last }) => last)).toEqual(['pass', 'pass', 'fail']);
    const held = await readUnitRecord(serial(2));
    expect(held?.history.map(({ event }) => event.type)).toEqual(
      expect.arrayContaining(['hold.placed', 'hold.released']),
    );
    const started = history.find((event) => event.type === 'unit.started');
    const young = await readUnitRecord(serial(1), started?.at);
    expect(young?.standing.next).toEqual({ step: 10, operation: 'print' });
    expect(young?.history).toHaveLength(1);
    expect(await readUnitRecord('nobody')).toBeNull();
  });

  it('gives an item its stays and its holds, those of its lot too', async () => {
    const first = await readItemRecord('R-1');
    expect(first?.stays).toMatchObject([{ station: 'L1-PLACE', slot: '1-01' }]);
    expect(first?.stays[0]?.until).not.toBeNull();
    expect(first?.holds).toMatchObject([{ kind: 'lot', id: 'L-7', releasedAt: null }]);
    expect((await readItemRecord('R-2'))?.stays[0]?.until).toBeNull();
    expect((await readLotRecord('L-7'))?.items.map(({ item }) => item)).toEqual(['R-1']);
    expect(await readItemRecord('nothing')).toBeNull();
    expect(await readLotRecord('nothing')).toBeNull();
  });

  it('gives a container and a shipment their units, and who came back', async () => {
    const pallet = await readContainerRecord('PAL-1');
    expect(pallet).toMatchObject({
      around: [],
      containers: [{ container: 'CT-1', units: 9 }],
      unitCount: 9,
      shipping: { shipment: 'SH-1', customer: 'Northgate Rail' },
    });
    expect(await readContainerRecord('CT-1')).toMatchObject({ around: ['PAL-1'], unitCount: 9 });
    const shipment = await readShipmentRecord('SH-1');
    expect(shipment?.units.map(({ unit }) => unit)).toEqual(
      Array.from({ length: 9 }, (_, index) => serial(index + 2)),
    );
    expect(shipment?.cameBack).toEqual([serial(1)]);
    expect(await readContainerRecord('nothing')).toBeNull();
    expect(await readShipmentRecord('nothing')).toBeNull();
  });
});

describe('a plant file before it is saved', () => {
  it('tells its faults by line, or what it changes', async () => {
    const faulty = await previewPlant('{\n"parts": [\n{"number": ""}]}');
    expect(faulty.faults).toMatchObject([{ line: 3, pointer: '/parts/0/number', code: 'empty' }]);
    const good = await previewPlant('{"parts": [{"number": "R-10K"}, {"number": "NEW"}]}');
    expect(good).toMatchObject({ faults: [], changes: [{ kind: 'part', key: 'NEW', change: 'added' }] });
    const tower = await previewPlant('['.repeat(100_000));
    expect(tower.faults).toMatchObject([{ code: 'nested_too_deep' }]);
  });
});
