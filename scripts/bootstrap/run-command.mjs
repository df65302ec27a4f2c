import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './project-root.mjs';
import { StepFailed } from './run-step.mjs';

/** Runs a command's main function: settings from `.env` when asked, and a sentence for what is likely to fail. */
export async function runCommand(main, { readDotEnv = false } = {}) {
  // Whoever reads our output may go away; that must stop nothing.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
  process.chdir(projectRoot);
  const dotEnv = join(projectRoot, '.env');
  if (readDotEnv && existsSync(dotEnv)) process.loadEnvFile(dotEnv);
  try {
    await main();
  } catch (error) {
    console.error(explain(error));
    process.exit(1);
  }
}

function explain(error) {
  if (error instanceof StepFailed)
    return [error.output, error.message].filter((text) => text !== '').join('\n');
  if (error?.code === 'EACCES' || error?.code === 'EPERM' || error?.code === 'EROFS') {
    return `No permission for ${error.path ?? 'a file'} (${error.code}). Was an earlier start made by another user? Run as that user, or give the folder to this one.`;
  }
  if (error?.code === 'ENOSPC') return 'The disk is full.';
  return error?.stack ?? String(error);
}
