import type { EventType } from '@/lib/domain/events/catalogue';
import { numberedId } from '@/tests/support/event-maker';

const ENVELOPE = { at: '2026-03-02T08:15:30.120+00:00' };
const FULL_ENVELOPE = {
  ...ENVELOPE,
  station: 'L1-PLACE-1',
  operator: 'op-114',
  device: 'tab-7',
  deviceSeq: 41,
  uncertaintyMs: 0,
  gate: 'record',
};
const unit = 'WX4C0000123';
const OTHER_ID = '0198c0de-aaaa-7bbb-8ccc-0123456789ab';
const READINGS = [
  { name: 'v-core', value: 1.2, unit: 'V', low: 1.14, high: 1.26 },
  { name: 'log', value: 'ok' },
];

/** Bodies of every event type: the least that it takes first, then all that it can say. */
export const BODY_SAMPLES: Record<EventType, object[]> = {
  'unit.started': [
    { unit, product: 'WX4', revision: 'C' },
    { unit, product: 'WX4', revision: 'C', order: 'O-1', boardLot: 'B-1', panel: 'PN-1', panelPosition: 3 },
    { unit, product: 'WX4', revision: 'C', panelPosition: 'B2' },
  ],
  'unit.processed': [
    { unit, result: 'pass' },
    {
      unit,
      result: 'fail',
      startedAt: '2026-03-02T08:15:00Z',
      used: [{ item: 'J-1', positions: ['J1'], quantity: 1 }, { item: 'J-2' }],
      readings: READINGS,
      defects: [{ code: 'bridge', position: 'U1', note: 'pins 3 and 4' }, { code: 'tilt' }],
    },
  ],
  'unit.signed': [{ unit, meaning: 'released' }],
  'unit.joined': [{ unit, into: 'WX4C0000124', position: 'A1' }],
  'unit.separated': [{ unit, from: 'WX4C0000124' }],
  'part.removed': [
    { unit, position: 'C1' },
    { unit, position: 'C1', reason: 'cracked' },
  ],
  'part.installed': [
    { unit, position: 'C1', item: 'R-1' },
    { unit, position: 'C1', fromUnit: 'WX4C0000124', fromPosition: 'C2' },
  ],
  'unit.scrapped': [{ unit, reason: 'burnt' }],
  'unit.packed': [{ unit, container: 'CT-1' }],
  'unit.unpacked': [{ unit, container: 'CT-1' }],
  'container.nested': [{ container: 'CT-1', into: 'PL-1' }],
  'container.unnested': [{ container: 'CT-1', from: 'PL-1' }],
  'container.shipped': [
    { container: 'PL-1', shipment: 'SH-1', customer: 'Northgate Rail' },
    { container: 'PL-1', shipment: 'SH-1', customer: 'Northgate Rail', destination: 'Northern yard' },
  ],
  'unit.returned': [{ unit }, { unit, customer: 'Northgate Rail', reference: 'RMA-1', symptom: '' }],
  'hold.placed': (['unit', 'item', 'lot', 'container'] as const).map((kind) => ({
    target: { kind, id: 'X-1' },
    reason: 'cracks',
  })),
  'hold.released': [{ hold: OTHER_ID, disposition: 'use as is', reason: 'inspected' }],
  'exception.cleared': [{ event: OTHER_ID, reason: 'looked at under the microscope' }],
  'item.received': [
    { item: 'R-1', kind: 'reel' },
    { item: 'R-1', kind: 'lot', part: 'C-100N', lot: 'L9', supplier: 'Fell Parts', quantity: 4000 },
  ],
  'item.counted': [{ item: 'R-1', quantity: 0, method: 'x-ray' }],
  'item.mounted': [{ item: 'R-1', slot: '1-01' }],
  'item.unmounted': [
    { item: 'R-1', slot: '1-01' },
    { item: 'R-1', slot: '1-01', left: 120 },
  ],
  'item.spliced': [
    { from: 'R-1', to: 'R-2', slot: '1-01' },
    { from: 'R-1', to: 'R-2', slot: '1-01', greyUnits: 3 },
  ],
  'item.inspected': [
    { item: 'S-1', result: 'pass' },
    { item: 'S-1', result: 'fail', readings: READINGS },
  ],
  'item.retired': [
    { item: 'R-1', reason: 'worn' },
    { item: 'R-1', reason: 'empty', left: 0 },
  ],
  'device.retired': [{ device: 'tab-7', reason: 'fell into the wave solder' }],
  'label.printed': [
    { target: { kind: 'unit', id: unit }, copies: 1 },
    { target: { kind: 'badge', id: 'op-114' }, copies: 2, reason: 'worn' },
  ],
  'event.voided': [{ event: OTHER_ID, reason: 'scanned by mistake' }],
};

const AT_A_STATION: readonly string[] = ['unit.processed', 'item.mounted', 'item.unmounted', 'item.spliced'];

type Sample = { type: string; at: string; body: object } & Record<string, unknown>;

/** Every body in the least and in the fullest envelope that its type takes. */
export const ACCEPTED_EVENTS: Sample[] = Object.entries(BODY_SAMPLES).flatMap(([type, bodies], room) =>
  bodies.flatMap((body, number) => {
    const id = numberedId(number, room);
    const station = AT_A_STATION.includes(type) ? { station: 'L1-PLACE-1' } : {};
    return [
      { id, type, ...ENVELOPE, ...station, body },
      { id: id.toUpperCase(), type, ...FULL_ENVELOPE, body },
    ];
  }),
);

const started = { id: numberedId(1), type: 'unit.started', ...ENVELOPE };
const startBody = { unit, product: 'WX4', revision: 'C' };
const processed = { id: numberedId(2), type: 'unit.processed', ...ENVELOPE, station: 'L1-PLACE-1' };
const installed = { id: numberedId(3), type: 'part.installed', ...ENVELOPE };
const start = (change: object) => ({ ...started, body: startBody, ...change });
const startWith = (body: object) => ({ ...started, body: { ...startBody, ...body } });
const process = (body: object) => ({ ...processed, body: { unit, result: 'pass', ...body } });

/** A malformed event, and where its fault is (RFC 6901). */
export type RefusedEvent = { title: string; event: unknown; pointer: string };

/** One fault each; `byShapeAlone` are those that a JSON Schema can tell too. */
export const REFUSED_EVENTS: { byShapeAlone: RefusedEvent[]; byMeaning: RefusedEvent[] } = {
  byShapeAlone: [
    { title: 'null', event: null, pointer: '' },
    { title: 'a list', event: [], pointer: '' },
    { title: 'no type', event: { ...start({}), type: undefined }, pointer: '/type' },
    { title: 'an unknown type', event: start({ type: 'unit.exploded' }), pointer: '/type' },
    { title: 'a type of another letter case', event: start({ type: 'Unit.Started' }), pointer: '/type' },
    { title: 'no id', event: { ...start({}), id: undefined }, pointer: '/id' },
    {
      title: 'an id of version 4',
      event: start({ id: 'f47ac10b-58cc-4372-a567-0e02b2c3d479' }),
      pointer: '/id',
    },
    { title: 'an id that is a number', event: start({ id: 7 }), pointer: '/id' },
    { title: 'no time', event: { ...start({}), at: undefined }, pointer: '/at' },
    { title: 'a time without an offset', event: start({ at: '2026-03-02T08:15:30' }), pointer: '/at' },
    { title: 'a time without seconds', event: start({ at: '2026-03-02T08:15Z' }), pointer: '/at' },
    { title: 'a day that is none', event: start({ at: '2026-02-30T08:15:30Z' }), pointer: '/at' },
    { title: 'an hour that is none', event: start({ at: '2026-03-02T24:15:30Z' }), pointer: '/at' },
    { title: 'an offset that is none', event: start({ at: '2026-03-02T08:15:30+25:00' }), pointer: '/at' },
    { title: 'a time that is a number', event: start({ at: 1772439330 }), pointer: '/at' },
    { title: 'an unknown key', event: start({ colour: 'red' }), pointer: '/colour' },
    { title: 'an unknown key in the body', event: startWith({ colour: 'red' }), pointer: '/body/colour' },
    { title: 'no body', event: started, pointer: '/body' },
    { title: 'a body that is a list', event: { ...started, body: [] }, pointer: '/body' },
    { title: 'no unit', event: startWith({ unit: undefined }), pointer: '/body/unit' },
    { title: 'a unit that is a number', event: startWith({ unit: 7 }), pointer: '/body/unit' },
    { title: 'an empty unit', event: startWith({ unit: '' }), pointer: '/body/unit' },
    { title: 'a unit of 65 characters', event: startWith({ unit: 'W'.repeat(65) }), pointer: '/body/unit' },
    { title: 'null for an optional code', event: startWith({ order: null }), pointer: '/body/order' },
    {
      title: 'a fractional device number',
      event: start({ device: 'tab', deviceSeq: 1.5 }),
      pointer: '/deviceSeq',
    },
    { title: 'device number 0', event: start({ device: 'tab', deviceSeq: 0 }), pointer: '/deviceSeq' },
    { title: 'a negative doubt', event: start({ uncertaintyMs: -1 }), pointer: '/uncertaintyMs' },
    { title: 'an unknown gate', event: start({ gate: 'open' }), pointer: '/gate' },
    {
      title: 'no station where one is needed',
      event: { ...process({}), station: undefined },
      pointer: '/station',
    },
    { title: 'an unknown result', event: process({ result: 'maybe' }), pointer: '/body/result' },
    {
      title: 'an unknown key in a list',
      event: process({ used: [{ item: 'J-1' }, { item: 'J-2', colour: 'red' }] }),
      pointer: '/body/used/1/colour',
    },
    {
      title: 'a negative quantity',
      event: process({ used: [{ item: 'J-1', quantity: -1 }] }),
      pointer: '/body/used/0/quantity',
    },
    {
      title: 'a reading without a name',
      event: process({ readings: [{ value: 1 }] }),
      pointer: '/body/readings/0/name',
    },
  ],
  byMeaning: [
    { title: 'a space before a code', event: startWith({ unit: ' W' }), pointer: '/body/unit' },
    { title: 'a wide space after a code', event: startWith({ unit: 'W\u3000' }), pointer: '/body/unit' },
    { title: 'NUL in a code', event: startWith({ unit: 'W\u00001' }), pointer: '/body/unit' },
    { title: 'half a character in a code', event: startWith({ unit: 'W\ud83d' }), pointer: '/body/unit' },
    { title: 'a line break in a code', event: startWith({ unit: 'W\n1' }), pointer: '/body/unit' },
    { title: 'a turn of direction in a code', event: startWith({ unit: 'W\u202e1' }), pointer: '/body/unit' },
    { title: 'a soft hyphen in a code', event: startWith({ unit: 'W\u00ad1' }), pointer: '/body/unit' },
    { title: 'a leap second', event: start({ at: '2016-12-31T23:59:60Z' }), pointer: '/at' },
    { title: 'a time before 1970', event: start({ at: '1969-12-31T23:59:59Z' }), pointer: '/at' },
    { title: 'a device without its number', event: start({ device: 'tab' }), pointer: '/deviceSeq' },
    { title: 'a number without its device', event: start({ deviceSeq: 4 }), pointer: '/device' },
    {
      title: 'work that begins after its end',
      event: process({ startedAt: '2026-03-02T08:15:30.121Z' }),
      pointer: '/body/startedAt',
    },
    {
      title: 'an installation from nowhere',
      event: { ...installed, body: { unit, position: 'C1' } },
      pointer: '/body/item',
    },
    {
      title: 'an installation from two places',
      event: { ...installed, body: { unit, position: 'C1', item: 'R-1', fromUnit: 'W', fromPosition: 'C2' } },
      pointer: '/body/item',
    },
    {
      title: 'a salvage without its position',
      event: { ...installed, body: { unit, position: 'C1', fromUnit: 'W' } },
      pointer: '/body/fromPosition',
    },
  ],
};
