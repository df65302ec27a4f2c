import './bootstrap/require-node.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { runTypescript } from './bootstrap/run-typescript.mjs';

/** `npm run rebuild`: makes the read tables again from the event log, of the demo with `-- --demo`. */
await runCommand(
  async () => {
    if (process.argv.includes('--demo')) process.env.REELKIN_DEMO = '1';
    await prepareProject({ build: false });
    runTypescript('scripts/rebuild.ts');
  },
  { readDotEnv: true },
);
