import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';

let instantiated: Promise<void> | null = null;

/**
 * Prisma's schema engine, compiled from the WebAssembly file of its package: Node cannot import that file itself,
 * and the engine's other form is a download that a plant without internet does not get.
 */
export async function loadSchemaEngine(): Promise<typeof engine.SchemaEngine> {
  instantiated ??= instantiate();
  await instantiated;
  return engine.SchemaEngine;
}

async function instantiate(): Promise<void> {
  const packageFolder = dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'));
  const bytes = readFileSync(join(packageFolder, 'schema_engine_bg.wasm'));
  // The engine reports a bug of its own to this global before it gives up.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message(message: string) {
        console.error(`The migration engine failed: ${message}`);
      },
    },
  });
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': engine });
  engine.__wbg_set_wasm(instance.exports);
  const { __wbindgen_start: start } = instance.exports;
  if (typeof start === 'function') start();
}
