import { spawn } from 'node:child_process';
import { projectRoot } from './project-root.mjs';

const linesShownOnFailure = 60;

/**
 * Runs a program with its output held back, and shows `doing … 12 s` while it lasts and `done in 14 s` after.
 * Throws `StepFailed` with the end of the output when the program fails.
 */
export async function runStep({ doing, done, command, args, env = {} }) {
  const progress = startProgress(doing);
  const { code, output } = await runQuietly({ command, args, env });
  const seconds = progress.stop();
  if (code !== 0) throw new StepFailed(`${doing} failed (${code})`, lastLines(output));
  console.log(`${done} in ${seconds} s`);
  return output;
}

/** A step that failed in a way its own output explains; the caller prints both and leaves with code 1. */
export class StepFailed extends Error {
  constructor(message, output) {
    super(message);
    this.output = output;
  }
}

/** Runs a program without a terminal; resolves with its exit code (or signal) and everything it printed. */
export function runQuietly({ command, args, env = {} }) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: projectRoot,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const stop = (signal) => child.kill(signal);
    process.on('SIGINT', stop).on('SIGTERM', stop);
    const chunks = [];
    child.stdout.on('data', (chunk) => chunks.push(chunk));
    child.stderr.on('data', (chunk) => chunks.push(chunk));
    child.on('error', reject);
    child.on('close', (code, signal) => {
      process.off('SIGINT', stop).off('SIGTERM', stop);
      if (signal === 'SIGINT' || signal === 'SIGTERM') process.exit(signal === 'SIGINT' ? 130 : 143);
      resolve({ code: code ?? signal, output: Buffer.concat(chunks).toString('utf8') });
    });
  });
}

/** Says what goes on and for how long: in place on a terminal, else one line every five seconds. */
export function startProgress(doing) {
  const startedAt = performance.now();
  const elapsed = () => Math.round((performance.now() - startedAt) / 1000);
  const onTerminal = process.stdout.isTTY === true;
  const show = () => {
    const line = `${doing} … ${elapsed()} s`;
    process.stdout.write(onTerminal ? `\r${line}` : `${line}\n`);
  };
  if (onTerminal) process.stdout.write(`${doing} …`);
  else console.log(`${doing} …`);
  const timer = setInterval(show, onTerminal ? 1000 : 5000);
  return {
    stop() {
      clearInterval(timer);
      if (onTerminal) process.stdout.write('\r\u001b[2K');
      return elapsed();
    },
  };
}

function lastLines(output) {
  return output.trimEnd().split('\n').slice(-linesShownOnFailure).join('\n');
}
