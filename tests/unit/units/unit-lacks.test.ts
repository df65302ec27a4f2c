import { describe, expect, it } from 'vitest';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import { indexPlant } from '@/lib/domain/plant/plant';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import { lacksOf } from '@/lib/domain/units/unit-lacks';
import { eventMaker } from '@/tests/support/event-maker';

const plant = indexPlant(
  plantFileSchema.parse({
    stations: [
      { code: 'PRINT', operation: 'print' },
      { code: 'ASSY', operation: 'assembly' },
      { code: 'TEST', operation: 'test' },
    ],
    products: [
      {
        number: 'WX4',
        revision: 'C',
        route: [
          { step: 10, operation: 'print' },
          { step: 20, operation: 'assembly' },
          { step: 30, operation: 'test' },
        ],
        bom: [
          { part: 'C-100N', positions: ['C1', 'C14'] },
          { product: 'PSU2', positions: ['A1'] },
          { product: 'PSU3', positions: ['A1'] },
          { product: 'RADIO', positions: ['A2'] },
        ],
      },
    ],
  }),
);
const say = eventMaker();
const begun = [say.started({ unit: 'W1', product: 'WX4', revision: 'C' }), say.passed('W1', 'PRINT')];
const RADIO = { position: 'A2', until: null };

function lacks(
  events: readonly WireEvent[],
  { stays = [RADIO], usual = [] }: Partial<Pick<Parameters<typeof lacksOf>[2], 'stays' | 'usual'>> = {},
) {
  return lacksOf('W1', events.map(toLogged), { plant, stays, usual });
}

describe('what a unit lacks', () => {
  const MISSING = { what: 'missing_inner', product: 'PSU2 / PSU3', position: 'A1' };

  it('is no sub-assembly before the unit passed where one is usually put in', () => {
    expect(lacks(begun)).toEqual([]);
    expect(lacks(begun, { usual: ['RADIO'] })).toEqual([]);
    expect(lacks(begun, { usual: ['PSU3'] })).toEqual([MISSING]);
  });

  it('is every sub-assembly that is not in once all steps are passed, whatever was usual', () => {
    const all = [...begun, say.passed('W1', 'ASSY'), say.passed('W1', 'TEST')];
    expect(lacks(all)).toEqual([MISSING]);
    expect(lacks(all, { stays: [] })).toEqual([
      MISSING,
      { what: 'missing_inner', product: 'RADIO', position: 'A2' },
    ]);
    expect(lacks(all, { stays: [RADIO, { position: 'A1', until: null }] })).toEqual([]);
  });

  it('is a sub-assembly that was taken out and not put back', () => {
    const gone = { position: 'A1', until: '2026-03-02T08:00:00Z' };
    expect(lacks(begun, { stays: [RADIO, gone] })).toEqual([MISSING]);
    expect(lacks(begun, { stays: [RADIO, gone, { position: 'A1', until: null }] })).toEqual([]);
  });

  it('is a part that was removed and not replaced, by an installation or by a lot that was used', () => {
    const removed = [...begun, say.removed('W1', 'C14')];
    const used = say.passed('W1', 'ASSY', {}, { used: [{ item: 'LOT-1', positions: ['C14'] }] });
    expect(lacks(removed)).toEqual([{ what: 'empty_position', position: 'C14' }]);
    expect(lacks([...removed, say.installed({ unit: 'W1', position: 'C14', item: 'R1' })])).toEqual([]);
    expect(lacks([...removed, used])).toEqual([]);
  });

  it('is nothing any more when it is scrap', () => {
    expect(lacks([...begun, say.removed('W1', 'C14'), say.scrapped('W1')], { usual: ['PSU2'] })).toEqual([]);
  });
});
