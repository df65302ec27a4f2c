import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** Files that are not ours to redistribute lie beside the project, where there are any. */
const REFERENCE_FOLDER = resolve(process.cwd(), '../shared/reference');

/** The text of a reference file, or null, said aloud, where it is absent. */
export function readReferenceFile(name: string): string | null {
  const path = resolve(REFERENCE_FOLDER, name);
  if (existsSync(path)) return readFileSync(path, 'utf8');
  console.warn(`SKIPPED: ${path} is absent; its check values are not looked at.`);
  return null;
}
