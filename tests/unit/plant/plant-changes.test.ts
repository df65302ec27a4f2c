import { describe, expect, it } from 'vitest';
import { plantChanges } from '@/lib/domain/plant/plant-changes';
import type { PlantFile } from '@/lib/domain/plant/plant-file';

const before: PlantFile = {
  site: { code: 'TVE', timeZone: 'Europe/London' },
  parts: [{ number: 'P-1', description: 'one' }, { number: 'P-2' }],
  stations: [{ code: 'S-1', operation: 'print', slots: [{ name: '1', holds: 'reel' }] }],
};

describe('what a plant file would change', () => {
  it('is nothing for the plant itself and for what it omits', () => {
    expect(plantChanges(before, before)).toEqual([]);
    expect(plantChanges(before, { parts: [{ number: 'P-1' }] })).toEqual([]);
  });

  it('names new entries, and the fields of changed ones', () => {
    const file: PlantFile = {
      site: { code: 'TVE', name: 'Tarn Valley' },
      parts: [{ number: 'P-2', description: 'two' }, { number: 'P-3' }],
      stations: [{ code: 'S-1', operation: 'print', slots: [{ name: '2', holds: 'reel' }] }],
    };
    expect(plantChanges(before, file)).toEqual([
      { kind: 'site', key: 'TVE', change: 'changed', fields: ['name'] },
      { kind: 'part', key: 'P-2', change: 'changed', fields: ['description'] },
      { kind: 'part', key: 'P-3', change: 'added', fields: [] },
      { kind: 'station', key: 'S-1', change: 'changed', fields: ['slots'] },
    ]);
  });
});
