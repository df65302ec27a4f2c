import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Absolute path of the checkout that this script belongs to, whatever the working directory is. */
export const projectRoot = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
