import './bootstrap/require-node.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { runTypescript } from './bootstrap/run-typescript.mjs';

/** `npm run bench -- --units 100000`: speed and size beside other models, on a PostgreSQL of its own; `--genealogy`: frames of the picture. */
await runCommand(
  async () => {
    const isGenealogy = process.argv.includes('--genealogy');
    await prepareProject({ build: isGenealogy || !process.argv.includes('--no-http') });
    const script = isGenealogy ? 'run-genealogy-frames' : 'run-bench';
    runTypescript(`scripts/bench/${script}.ts`, { args: process.argv.slice(2) });
  },
  { readDotEnv: false },
);
