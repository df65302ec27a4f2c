import './bootstrap/require-node.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { runTypescript } from './bootstrap/run-typescript.mjs';

/** `npm run bench -- --units 100000`: speed and size beside other models, on a PostgreSQL of its own. */
await runCommand(
  async () => {
    await prepareProject({ build: !process.argv.includes('--no-http') });
    runTypescript('scripts/bench/run-bench.ts', { args: process.argv.slice(2) });
  },
  { readDotEnv: false },
);
