import type { WireEvent } from '@/lib/domain/events/catalogue';
import { formatInstant } from '@/lib/domain/time';
import { eventMaker } from '@/tests/support/event-maker';

/** Units of the history, in the order of their making: `WX4C0000001` … */
export function serial(number: number): string {
  return `WX4C${String(number).padStart(7, '0')}`;
}

export const UNIT_COUNT = 120;
/** Units placed before the reel was changed, of which the last two may have met the second one. */
export const FIRST_REEL_COUNT = 110;

/** One line of three stations, out of the order in which units come to them. */
export const SCENE_PLANT = {
  site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
  parts: [{ number: 'R-10K', description: 'Resistor 10 kΩ' }],
  stations: [
    { code: 'TEST-1', line: 'L1', operation: 'test' },
    { code: 'L1-PLACE', line: 'L1', operation: 'place', slots: [{ name: '1-01', holds: 'reel' }] },
    { code: 'L1-PRINT', line: 'L1', operation: 'print', slots: [{ name: 'stencil', holds: 'stencil' }] },
  ],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      serialPattern: '^WX4C[0-9]{7}$',
      route: [
        { step: 10, operation: 'print' },
        { step: 20, operation: 'place' },
        { step: 30, operation: 'test' },
      ],
      bom: [{ part: 'R-10K', positions: ['R1', 'R2'], station: 'L1-PLACE', slot: '1-01' }],
    },
  ],
  operators: [{ badge: 'op-1', name: 'Ada Fell', operations: ['print', 'place', 'test'] }],
};

/**
 * 120 units printed and placed up to now, two minutes apart; reel R-1 gave way to R-2 after 110 of them, give or take
 * three minutes. Ten are tested, signed, packed in CT-1 on pallet PAL-1 and shipped; one failed its test.
 */
export function sceneHistory(now = Date.now()): WireEvent[] {
  const make = eventMaker();
  const at = (minutesAgo: number) => ({ at: formatInstant((now - minutesAgo * 60_000) * 1000) });
  const placedAgo = (number: number) => 2 * (UNIT_COUNT - number) + 1;
  const who = { operator: 'op-1' };
  const placed = Array.from({ length: UNIT_COUNT }, (_, index) => {
    const [unit, ago] = [serial(index + 1), placedAgo(index + 1)];
    return [
      make.started(
        { unit, product: 'WX4', revision: 'C', ...(index === 0 && { panel: 'PANEL-9', order: 'ORDER-9' }) },
        { ...at(ago + 0.9), ...who },
      ),
      make.passed(unit, 'L1-PRINT', { ...at(ago + 0.6), ...who }),
      make.passed(unit, 'L1-PLACE', { ...at(ago), ...who }),
    ];
  });
  const tested = Array.from({ length: 10 }, (_, index) => {
    const unit = serial(index + 1);
    return [
      make.passed(unit, 'TEST-1', { ...at(60), ...who }),
      make.make('unit.signed', { unit, meaning: 'released' }, at(50)),
      make.packed(unit, 'CT-1', at(40)),
    ];
  });
  const stencil = { station: 'L1-PRINT', ...at(500) };
  const first = { station: 'L1-PLACE', ...at(500) };
  const second = { station: 'L1-PLACE', ...at(placedAgo(FIRST_REEL_COUNT) - 1), uncertaintyMs: 180_000 };
  return [
    make.received({ item: 'ST-1', kind: 'stencil' }, at(600)),
    make.received({ item: 'R-1', kind: 'reel', part: 'R-10K', lot: 'L-7', quantity: 5000 }, at(600)),
    make.received({ item: 'R-2', kind: 'reel', part: 'R-10K', lot: 'L-8', quantity: 5000 }, at(600)),
    make.received({ item: 'L-7', kind: 'lot', part: 'R-10K' }, at(600)),
    make.make('item.mounted', { item: 'ST-1', slot: 'stencil' }, stencil),
    make.make('item.mounted', { item: 'R-1', slot: '1-01' }, first),
    ...placed.slice(0, FIRST_REEL_COUNT).flat(),
    make.make('item.mounted', { item: 'R-2', slot: '1-01' }, second),
    ...placed.slice(FIRST_REEL_COUNT).flat(),
    ...tested.flat(),
    make.failed(serial(11), 'TEST-1', { ...at(45), ...who }),
    make.nested('CT-1', 'PAL-1', at(38)),
    make.make(
      'container.shipped',
      { container: 'PAL-1', shipment: 'SH-1', customer: 'Northgate Rail' },
      at(30),
    ),
  ];
}
