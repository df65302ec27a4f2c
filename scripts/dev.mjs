import './bootstrap/require-node.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { runTypescript } from './bootstrap/run-typescript.mjs';

/** `npm run dev`: the same server and database, with pages compiled as they change. */
await runCommand(
  async () => {
    await prepareProject({ build: false });
    runTypescript('scripts/serve.ts', {
      args: ['--dev'],
      env: { NODE_ENV: 'development', NEXT_TELEMETRY_DISABLED: '1' },
    });
  },
  { readDotEnv: true },
);
