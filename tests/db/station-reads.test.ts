import { expect, it } from 'vitest';
import type { Principal } from '@/lib/domain/people/principal';
import { scanPictureSchema } from '@/lib/domain/station/scan-picture';
import { stationPictureSchema } from '@/lib/domain/station/station-picture';
import { listOpenHolds } from '@/lib/server/list-open-holds';
import { listStations } from '@/lib/server/list-stations';
import { nameOf } from '@/lib/server/name-of';
import { putPlant } from '@/lib/server/put-plant';
import { readChangeover } from '@/lib/server/read-changeover';
import { readPack } from '@/lib/server/read-pack';
import { readProduct } from '@/lib/server/read-product';
import { readScan } from '@/lib/server/read-scan';
import { readStation } from '@/lib/server/read-station';
import { readUnitRecord } from '@/lib/server/read-unit-record';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

freshDatabase();

const TOKEN: Principal = { kind: 'token' };

it('a station shows its slots, its products, and whether the one who asks is qualified', async () => {
  const { place, print, product, reel, mustSend, say, name } = await openFloor();
  const held = name('R-held');
  await mustSend(
    say.received({ item: held, kind: 'reel', part: 'C-100N', lot: name('LOT-held') }),
    say.mounted(held, place, 'F2'),
    say.make(
      'hold.placed',
      { target: { kind: 'lot', id: name('LOT-held') }, reason: 'cracks' },
      { operator: name('op-print') },
    ),
  );
  const picture = stationPictureSchema.parse(await readStation(place, TOKEN));
  expect(picture).toMatchObject({
    station: { code: place, operation: 'place', slotCount: 2 },
    isOnRoute: true,
    isQualified: true,
  });
  expect(picture.products).toContainEqual({ product, revision: 'C' });
  expect(picture.slots.map(({ name: slot, state, item }) => [slot, state, item?.item])).toEqual([
    ['F1', 'ready', reel],
    ['F2', 'held', held],
  ]);
  const tester: Principal = { kind: 'person', badge: name('op-test'), role: 'operator' };
  expect(await readStation(print, tester)).toMatchObject({ isQualified: false });
  expect(await readStation('NOWHERE', TOKEN)).toBeNull();
  const { stations } = await listStations();
  expect(stations).toContainEqual({ code: place, line: null, operation: 'place', slotCount: 2 });
});

it('a station remembers its last results, defects and scanned parts, without what was voided', async () => {
  const { through, mustSend, say, test, name, product } = await openFloor();
  const lot = name('LOOSE');
  const fail = (unit: string, code: string) =>
    say.make(
      'unit.processed',
      { unit, result: 'fail', defects: [{ code, position: 'J1' }] },
      { station: test },
    );
  const [first, second] = [through('WA'), through('WB')].map((events) => events.slice(0, 3));
  const fails = [fail('WA', 'BRIDGE'), fail('WA', 'BRIDGE')];
  const wrong = fail('WB', 'WRONG');
  await mustSend(
    say.received({ item: lot, kind: 'lot', part: 'J-8' }),
    ...(first ?? []),
    ...(second ?? []),
    ...fails,
    wrong,
    say.passed('WB', test, {}, { used: [{ item: lot, positions: ['J1'] }] }),
    say.voided(wrong.id),
  );
  const picture = await readStation(test, TOKEN);
  expect(picture?.defects).toEqual([{ code: 'BRIDGE', count: 2 }]);
  expect(picture?.defectsElsewhere).not.toContain('BRIDGE');
  expect(picture?.fits).toEqual([{ product, revision: 'C', part: 'J-8', item: lot }]);
  expect(
    picture?.recent.map(({ unit, result, isVoided, isHeld }) => [unit, result, isVoided, isHeld]),
  ).toEqual([
    ['WB', 'pass', false, false],
    ['WB', 'fail', true, false],
    ['WA', 'fail', false, true],
    ['WA', 'fail', false, true],
  ]);
  expect(picture?.recent[2]?.defects).toEqual([{ code: 'BRIDGE', position: 'J1' }]);
});

it('from where a sub-assembly is usually put in, a unit without one says so; an empty position at once', async () => {
  const { start, startInner, mustSend, say, print, place, test, product, inner, reel } = await openFloor();
  const bom = [
    { part: 'C-100N', positions: ['C1', 'C2'], station: place, slot: 'F1' },
    { product: inner, positions: ['A1'] },
  ];
  const route = [
    { step: 10, operation: 'print' },
    { step: 20, operation: 'place' },
    { step: 30, operation: 'test', attempts: 2 },
  ];
  await putPlant({ products: [{ number: product, revision: 'C', serialPattern: '^W', route, bom }] }, 'test');
  const missing = { what: 'missing_inner', product: inner, position: 'A1' };
  const cautionsOf = async (unit: string) => {
    const { unit: picture } = scanPictureSchema.parse(await readScan(unit, test));
    expect((await readUnitRecord(unit))?.cautions).toEqual(picture?.cautions);
    return picture?.cautions;
  };
  // Nothing was usual yet when this one passed: it says so when every step is passed.
  await mustSend(start('WJ0'), say.passed('WJ0', print), say.passed('WJ0', place));
  expect(await cautionsOf('WJ0')).toEqual([]);
  await mustSend(
    start('WJ1'),
    startInner('PJ1'),
    say.passed('PJ1', test),
    say.passed('WJ1', print),
    say.joined('PJ1', 'WJ1', { station: place }),
    say.passed('WJ1', place),
    start('WJ2'),
    say.passed('WJ2', print),
  );
  expect(await cautionsOf('WJ1')).toEqual([]);
  expect(await cautionsOf('WJ2')).toEqual([]);
  await mustSend(say.passed('WJ2', place), say.passed('WJ0', test));
  expect(await cautionsOf('WJ2')).toEqual([missing]);
  expect(await cautionsOf('WJ0')).toEqual([missing]);
  const removed = say.removed('WJ1', 'C1');
  const fitted = say.installed({ unit: 'WJ1', position: 'C1', item: reel });
  await mustSend(removed, fitted);
  expect(await cautionsOf('WJ1')).toEqual([]);
  await mustSend(say.voided(fitted.id), say.separated('PJ1', 'WJ1'));
  expect(await cautionsOf('WJ1')).toEqual([missing, { what: 'empty_position', position: 'C1' }]);
});

it('a scan tells what a code names', async () => {
  const { start, startInner, mustSend, say, name, print, place, product, inner, reel, lot } =
    await openFloor();
  await mustSend(
    start('W1'),
    startInner('P1'),
    say.joined('P1', 'W1'),
    say.passed('W1', print),
    say.make(
      'unit.processed',
      { unit: 'W1', result: 'fail', defects: [{ code: 'TILT', position: 'C1' }] },
      { station: place },
    ),
    say.removed('W1', 'C1'),
  );
  const scan = scanPictureSchema.parse(await readScan('W1', place));
  expect(scan.unit).toMatchObject({
    product,
    revision: 'C',
    place: { kind: 'station', station: place },
    next: { operation: 'place', step: 20 },
    failure: {
      operation: 'place',
      step: 20,
      tries: 1,
      attempts: 3,
      defects: [{ code: 'TILT', position: 'C1', note: null }],
    },
    open: ['C1'],
    joined: [{ unit: 'P1', position: 'A1' }],
    signing: [{ code: 'open_failure' }],
  });
  expect(scan.unit?.steps).toEqual([
    { step: 10, operation: 'print', last: 'pass' },
    { step: 20, operation: 'place', last: 'fail' },
    { step: 30, operation: 'test', last: null },
  ]);
  expect((await readScan('P1', undefined)).unit).toMatchObject({ product: inner, outer: 'W1' });
  const item = (await readScan(reel, undefined)).item;
  expect(item).toMatchObject({ kind: 'reel', lot, mounted: [{ station: place, slot: 'F1' }] });
  expect(await readScan('NOTHING', place)).toEqual({
    code: 'NOTHING',
    unit: null,
    item: null,
    container: null,
    isContainerLike: false,
    label: null,
    isPart: false,
    serialOf: [],
    startable: [],
  });
  expect(await readScan('C-100N', undefined)).toMatchObject({ item: null, label: null, isPart: true });
  const badge = name('op-print');
  expect((await readScan(place, place)).label).toEqual({ kind: 'station', station: place });
  expect((await readScan(badge, place)).label).toEqual({ kind: 'badge', badge });
  expect((await readScan(`${place}:F1`, undefined)).label).toEqual({
    kind: 'slot',
    station: place,
    slot: 'F1',
  });
  expect((await readScan(`${place}:F9`, undefined)).label).toBeNull();
  expect((await readScan(reel, place)).label).toBeNull();
});

it('a code that nobody knows looks like a container when only its digits differ from those of an earlier one', async () => {
  const { mustSend, say, start, print, place, test, name } = await openFloor();
  const like = async (code: string) => (await readScan(code, undefined)).isContainerLike;
  const carton = name('KT-18');
  await mustSend(
    start('WK1'),
    ...[print, place, test].map((station) => say.passed('WK1', station)),
    say.signed('WK1'),
    say.packed('WK1', carton),
  );
  expect(await like(carton)).toBe(false);
  expect(await like(carton.replace('18', '19'))).toBe(true);
  expect(await like(carton.replace('18', '019'))).toBe(false);
  expect(await like(carton.replace('KT', 'KU'))).toBe(false);
  expect(await like(place)).toBe(false);
  expect(await like('BARCODE')).toBe(false);
});

it('a station tells what was measured there lately of each product, with unit and limits', async () => {
  const { mustSend, say, start, print, product } = await openFloor();
  const height = { name: 'height', value: 120, unit: 'µm', low: 100, high: 140 };
  const measured = (unit: string, ...readings: object[]) =>
    say.make('unit.processed', { unit, result: 'pass', readings }, { station: print });
  await mustSend(
    ...['WR1', 'WR2', 'WR3', 'WR4'].map((unit) => start(unit)),
    measured('WR1', height, { name: 'area', value: 1 }),
    measured('WR2', { ...height, value: 'torn', high: 150 }),
    say.passed('WR3', print),
  );
  const usual = async () => (await readStation(print, { kind: 'token' }))?.readings;
  const named = { product, revision: 'C' };
  expect(await usual()).toEqual([
    { ...named, name: 'height', unit: 'µm', low: 100, high: 150 },
    { ...named, name: 'area', unit: null, low: null, high: null },
  ]);
  const many = Array.from({ length: 12 }, (_, index) => ({ name: `pad-${index}`, value: index }));
  await mustSend(measured('WR4', ...many));
  expect(await usual()).toEqual([]);
});

it('a new serial may be started where its route begins, or where no route goes', async () => {
  const { print, place, rework, product } = await openFloor();
  const startable = async (station: string) =>
    (await readScan('W-new', station)).startable.filter((row) => row.product === product);
  const option = { product, revision: 'C' };
  expect(await startable(print)).toEqual([option]);
  expect(await startable(place)).toEqual([]);
  expect(await startable(rework)).toEqual([option]);
  expect((await readScan('W-new', undefined)).serialOf).toContainEqual(option);
  expect((await readScan('X-new', print)).startable.filter((row) => row.product === product)).toEqual([]);
});

it('a product shows where its parts go', async () => {
  const { product, place } = await openFloor();
  expect(await readProduct(product, 'C')).toEqual({
    product,
    revision: 'C',
    lines: [{ part: 'C-100N', inner: null, positions: ['C1', 'C2'], station: place, slot: 'F1' }],
  });
  expect(await readProduct(product, 'Z')).toBeNull();
});

it('a changeover shows the slots that its station has', async () => {
  const { place, product, reel } = await openFloor();
  const picture = await readChangeover(place);
  expect(picture?.products).toContainEqual({ product, revision: 'C' });
  expect(picture?.slots[0]).toMatchObject({ name: 'F1', item: { item: reel, part: 'C-100N' } });
  expect(await readChangeover('NOWHERE')).toBeNull();
});

it('a container shows what is in it at any depth, and what stops it', async () => {
  const { finished, mustSend, say, name } = await openFloor();
  const [carton, second, pallet] = [name('CT-1'), name('CT-2'), name('PAL')];
  await mustSend(
    ...finished('W7'),
    ...finished('W8'),
    say.packed('W7', carton),
    say.packed('W8', second),
    say.make('container.nested', { container: carton, into: pallet }, {}),
    say.make('container.nested', { container: second, into: pallet }, {}),
    say.make('hold.placed', { target: { kind: 'unit', id: 'W8' }, reason: 'look again' }, {}),
  );
  expect(await readPack(carton)).toMatchObject({
    isKnown: true,
    inside: pallet,
    units: [{ unit: 'W7', revision: 'C' }],
    unitCount: 1,
    blocked: [],
  });
  expect(await readPack(pallet)).toMatchObject({
    units: [],
    containers: [
      { container: carton, unitCount: 1 },
      { container: second, unitCount: 1 },
    ],
    unitCount: 2,
    blocked: [{ code: 'on_hold', id: 'W8' }],
  });
  expect(await readPack('CT-nobody')).toMatchObject({ isKnown: false, unitCount: 0, blocked: [] });
});

it('open holds are listed oldest first, with who placed them', async () => {
  const { start, mustSend, say, name, test, through } = await openFloor();
  const place = (unit: string) =>
    say.make(
      'hold.placed',
      { target: { kind: 'unit', id: unit }, reason: `look at ${unit}` },
      { operator: name('op-test') },
    );
  await mustSend(start('WX'), start('WY'));
  const [first, second] = [place('WX'), place('WY')];
  await mustSend(first, second, say.released(second.id));
  await mustSend(...through('WZ').slice(0, 3), say.failed('WZ', test), say.failed('WZ', test));
  const { holds, total } = await listOpenHolds();
  const own = holds.filter(({ id }) => ['WX', 'WY', 'WZ'].includes(id));
  expect(own).toMatchObject([
    { id: 'WX', kind: 'unit', reason: 'look at WX', automatic: false, placedBy: name('op-test') },
    { id: 'WZ', reason: 'attempts_exhausted', automatic: true },
  ]);
  expect(total).toBe(holds.length);
});

it('a badge has the name that the plant knows', async () => {
  expect(await nameOf('nobody')).toBeNull();
});
