import { spawn } from 'node:child_process';
import { projectRoot } from './project-root.mjs';

const parentCheckMs = 1000;

/**
 * Runs a TypeScript program of this project in the foreground and leaves with its exit code. Signals that reach
 * only us are passed on, and should npm vanish above us the program is told to stop, so that nothing is orphaned.
 */
export function runTypescript(script, { args = [], env = {} } = {}) {
  const child = spawn(process.execPath, ['--import', 'tsx', script, ...args], {
    cwd: projectRoot,
    env: { ...process.env, ...env },
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  if (process.env.npm_lifecycle_event !== undefined) stopWithParent(child);
  child.on('error', (error) => {
    console.error(`Cannot start ${script}: ${error.message}`);
    process.exit(1);
  });
  child.on('exit', (code, signal) => {
    if (signal !== null) console.error(`${script} was ended by ${signal}`);
    process.exit(code ?? 1);
  });
}

function stopWithParent(child) {
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) child.kill('SIGTERM');
  }, parentCheckMs).unref();
}
