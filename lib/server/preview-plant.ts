import { inputErrors } from '@/lib/domain/input-errors';
import { mergePlant } from '@/lib/domain/plant/merge-plant';
import { indexPlant } from '@/lib/domain/plant/plant';
import { plantChanges } from '@/lib/domain/plant/plant-changes';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import type { PlantPreview } from '@/lib/domain/plant/plant-preview';
import { plantWarnings } from '@/lib/domain/plant/plant-warnings';
import { nestingDepth } from '@/lib/server/http/nesting-depth';
import { locateFaults, parseJsonText } from '@/lib/server/locate-faults';
import { readPlant } from '@/lib/server/read-plant';

// As deep as a request's body may nest; a plant file nests five levels.
const NESTING_DEPTH_MAX = 64;

/** What the text of a plant file would change, or what is wrong with it, line by line. Changes nothing. */
export async function previewPlant(text: string): Promise<PlantPreview> {
  const nothing = { warnings: [], changes: [] };
  if (nestingDepth(text) > NESTING_DEPTH_MAX) {
    const detail = `The file nests more than ${NESTING_DEPTH_MAX} levels.`;
    return {
      ...nothing,
      faults: [{ line: 1, column: 1, offset: 0, pointer: '', code: 'nested_too_deep', detail }],
    };
  }
  const { tree, faults } = parseJsonText(text);
  if (tree === null) return { ...nothing, faults };
  const parsed = plantFileSchema.safeParse(JSON.parse(text));
  if (!parsed.success) return { ...nothing, faults: locateFaults(text, tree, inputErrors(parsed.error)) };
  const { file } = await readPlant();
  return {
    faults: [],
    warnings: plantWarnings(indexPlant(mergePlant(file, parsed.data))),
    changes: plantChanges(file, parsed.data),
  };
}
