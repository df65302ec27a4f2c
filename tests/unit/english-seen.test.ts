import { expect, it } from 'vitest';
import { englishAmong } from '@/tests/support/english-seen';

const ENGLISH = ['Floor', 'Line L1', 'Where-used of item R-1', '5 units', 'Two: One must has to stay.'];
const CODES = [
  'R-1',
  'WX4 C',
  '12',
  'op-1 Ada Fell',
  'Northgate Rail',
  'Resistor 10 kΩ',
  '2026-03-02 08:15',
  'CRACK',
];

it('tells English texts from translated ones and from codes, also with facts in them', () => {
  const spanish = ['Piso', 'Línea L1', 'Dónde se usó el artículo R-1', '5 unidades', 'Panel'];
  expect(englishAmong([...ENGLISH, ...spanish, ...CODES], 'es')).toEqual(ENGLISH);
  const chinese = ['現場', 'L1 線', '物料 R-1 用於何處', '5 台產品', '連板'];
  expect(englishAmong([...ENGLISH, ...chinese, ...CODES], 'zh-Hant')).toEqual(ENGLISH);
});
