import './bootstrap/require-node.mjs';
import { resolve } from 'node:path';
import { findConflict } from './bootstrap/find-conflict.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { StepFailed } from './bootstrap/run-step.mjs';
import { runTypescript } from './bootstrap/run-typescript.mjs';

await runCommand(start, { readDotEnv: true });

/** `npm start` and `npm run demo`, each also with `-- --lan`: prepares what is missing, then serves until it is told to stop. */
async function start() {
  if (process.argv.includes('--demo')) process.env.REELKIN_DEMO = '1';
  if (process.argv.includes('--lan')) process.env.REELKIN_LAN = '1';
  await refuseConflict();
  await prepareProject({ build: true });
  runTypescript('scripts/serve.ts', { env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' } });
}

/** Says at once, not after a minute of building, that another process is in the way; serve.ts checks for good. */
async function refuseConflict() {
  const { HOST, PORT, REELKIN_DATA, REELKIN_DEMO, REELKIN_LAN, DATABASE_URL } = process.env;
  const port = Number(PORT || 3000);
  if (!Number.isInteger(port) || port < 0 || port > 65535) return;
  const defaultData = REELKIN_DEMO === '1' ? '.reelkin/demo' : '.reelkin';
  const dataFolder = DATABASE_URL ? null : resolve(REELKIN_DATA || defaultData);
  const conflict = await findConflict({
    host: HOST || (REELKIN_LAN === '1' ? '0.0.0.0' : '127.0.0.1'),
    port,
    dataFolder,
  });
  if (conflict !== null) throw new StepFailed(conflict, '');
}
