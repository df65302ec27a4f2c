import { expect, it } from 'vitest';
import { indexPlant } from '@/lib/domain/plant/plant';

it('a plant names the parts of its list and those of its BOMs, and nothing else', () => {
  const plant = indexPlant({
    parts: [{ number: 'P-1' }],
    products: [{ number: 'WX4', revision: 'C', bom: [{ part: 'P-2' }, { product: 'PSU2' }] }],
  });
  const asked = ['P-1', 'P-2', 'WX4', 'PSU2', 'P-3'];
  expect(asked.filter((code) => plant.namesPart(code))).toEqual(['P-1', 'P-2']);
  expect(indexPlant({}).namesPart('P-1')).toBe(false);
});
