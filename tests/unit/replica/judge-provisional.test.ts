import { describe, expect, test } from 'vitest';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { indexPlant } from '@/lib/domain/plant/plant';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { judgeProvisional } from '@/lib/domain/replica/judge-provisional';
import type { ReplicaAnswer, ReplicaUnit } from '@/lib/domain/replica/replica-answer';
import { replicaKnown } from '@/lib/domain/replica/replica-known';
import { UNSEEN_UNIT, type UnitState } from '@/lib/domain/units/unit-state';
import { eventMaker } from '@/tests/support/event-maker';
import { GATE_PLANT } from '@/tests/support/known-builder';

const plant = indexPlant({
  ...GATE_PLANT,
  operators: [{ badge: 'op-1', operations: ['print', 'place', 'test'] }],
});
const AS_OF_MS = Date.UTC(2026, 2, 2, 5);
const passed = { last: 'pass', tries: 0 } as const;

function unit(code: string, state: Partial<UnitState>, rest: Partial<ReplicaUnit> = {}): ReplicaUnit {
  const started: UnitState = {
    ...UNSEEN_UNIT,
    product: 'WX4',
    revision: 'C',
    isStarted: true,
    placing: 'station',
  };
  const lastAtUs = AS_OF_MS * 1000;
  return {
    unit: code,
    state: { ...started, ...state },
    lastAtUs,
    outer: null,
    shipment: null,
    holds: [],
    ...rest,
  };
}

const WX4 = { number: 'WX4', revision: 'C', serialPattern: '^[WR]' };
const reel = {
  slot: 'F1',
  item: 'R-1',
  kind: 'reel' as const,
  part: 'C-100N',
  lot: null,
  isRetired: false,
  holds: [],
};

type Asked = {
  code?: string;
  products?: PlantFile['products'];
  kept?: ReplicaUnit | null;
  own?: WireEvent[];
  items?: ReplicaAnswer['items'];
  station?: string;
  operator?: string;
  withoutServer?: 'flag' | 'stop';
};

function ask({ kept = null, own = [], items = [], station = 'TEST', ...rest }: Asked) {
  const { operator = 'op-1', withoutServer = 'flag', code: unit = 'U-1', products } = rest;
  const asked = products === undefined ? plant : indexPlant({ ...plant.file, products });
  const known = replicaKnown({ plant: asked, items }, { unit, kept, outer: null, own });
  const event = {
    ...eventMaker().passed(unit, station, { operator }),
    type: 'unit.processed' as const,
    station,
    body: { unit, result: 'pass' as const },
  };
  const { go, reasons, provisional } = judgeProvisional(event, known, { asOfMs: AS_OF_MS, withoutServer });
  return {
    go,
    reasons: reasons.map(({ code }) => code),
    undecided: provisional?.undecided.map(({ code }) => code),
    asOfMs: provisional?.asOfMs,
  };
}

const ready = unit('U-1', { steps: { '10': passed, '20': passed } });

describe('the gate without the server', () => {
  test('says go for a unit that is due, marked with the age of what it knows', () => {
    expect(ask({ kept: ready })).toEqual({ go: true, reasons: [], undecided: [], asOfMs: AS_OF_MS });
  });

  test.each([
    ['a hold', { kept: { ...ready, holds: [{ hold: 'h', reason: 'cracks' }] } }, 'on_hold'],
    ['scrap', { kept: unit('U-1', { ...ready.state, isScrapped: true }) }, 'scrapped'],
    ['a person who is not qualified', { kept: ready, station: 'REWORK' }, 'not_qualified'],
    [
      'a unit that was shipped',
      { kept: unit('U-1', { ...ready.state, placing: 'container', container: 'CT' }, { shipment: 'SH' }) },
      'already_shipped',
    ],
  ] satisfies [string, Asked, string][])('stops for %s', (_, asked, code) => {
    const { go, reasons } = ask(asked);
    expect(go).toBe(false);
    expect(reasons).toContain(code);
  });

  test.each([
    ['a unit it never heard of', { kept: null }, 'unknown_unit'],
    [
      'a step that another tablet may have passed',
      { kept: unit('U-1', { steps: { '10': passed } }) },
      'wrong_step',
    ],
    [
      'a failure that another tablet may have put right',
      { kept: unit('U-1', { steps: { '10': { last: 'fail', tries: 1 } } }) },
      'open_failure',
    ],
    ['a slot that may have been filled since', { kept: unit('U-1', {}), station: 'PRINT' }, 'slot_empty'],
  ] satisfies [string, Asked, string][])(
    'cannot decide about %s: goes on and says so, or stops as the plant wants it',
    (_, asked, code) => {
      const flagged = ask(asked);
      expect(flagged.go).toBe(true);
      expect(flagged.undecided).toContain(code);
      const stopped = ask({ ...asked, withoutServer: 'stop' });
      expect(stopped.go).toBe(false);
      expect(stopped.reasons).toContain(code);
    },
  );

  test.each([
    ['a badge', 'op-1', []],
    ['a station', 'PRINT', []],
    ['a reel that stands in a slot here', 'R-1', [reel]],
    ['a code that no product has for its serials', 'X-9', []],
  ])('never takes %s for a unit that another tablet has started', (_, code, items) => {
    const { go, reasons } = ask({ code, items, products: [WX4] });
    expect(go).toBe(false);
    expect(reasons).toContain('unknown_unit');
  });

  test('knows what this device has recorded since, and nothing twice', () => {
    const say = eventMaker();
    const fresh = say.started({ unit: 'U-1', product: 'WX4', revision: 'C' });
    expect(ask({ own: [fresh], station: 'PRINT' }).undecided).toEqual(['slot_empty']);
    const own = [say.scrapped('U-1'), say.scrapped('U-2')];
    expect(ask({ kept: ready, own }).reasons).toEqual(['scrapped']);
    const known = { ...ready, lastAtUs: Date.UTC(2027, 0, 1) * 1000 };
    expect(ask({ kept: known, own }).reasons).toEqual([]);
  });
});
