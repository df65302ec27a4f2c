import { mergePlant } from '@/lib/domain/plant/merge-plant';
import type { PlantFile } from '@/lib/domain/plant/plant-file';

/** What a plant file adds or changes: the entry, by its key, and the fields that become different. */
export type PlantChange = {
  kind: 'site' | 'part' | 'station' | 'product' | 'operator';
  key: string;
  change: 'added' | 'changed';
  fields: string[];
};

type Entry = Record<string, unknown>;

/** Everything that putting a file on top of the plant would change, in the order of the file; the rest stays. */
export function plantChanges(before: PlantFile, file: PlantFile): PlantChange[] {
  const after = mergePlant(before, file);
  return [
    ...changesOf('site', before.site && [before.site], after.site && [after.site], ({ code }) => code),
    ...changesOf('part', before.parts, after.parts, ({ number }) => number),
    ...changesOf('station', before.stations, after.stations, ({ code }) => code),
    ...changesOf(
      'product',
      before.products,
      after.products,
      ({ number, revision }) => `${number} ${revision}`,
    ),
    ...changesOf('operator', before.operators, after.operators, ({ badge }) => badge),
  ];
}

function changesOf<T extends Entry>(
  kind: PlantChange['kind'],
  before: readonly T[] | undefined,
  after: readonly T[] | undefined,
  keyOf: (entry: T) => string,
): PlantChange[] {
  const known = new Map((before ?? []).map((entry) => [keyOf(entry), entry]));
  return (after ?? []).flatMap((entry): PlantChange[] => {
    const key = keyOf(entry);
    const old = known.get(key);
    if (old === undefined) return [{ kind, key, change: 'added', fields: [] }];
    const fields = Object.keys(entry).filter(
      (field) => JSON.stringify(entry[field]) !== JSON.stringify(old[field]),
    );
    return fields.length === 0 ? [] : [{ kind, key, change: 'changed', fields }];
  });
}
