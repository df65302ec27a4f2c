import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const startLimitMs = 240_000;
const projectRoot = process.cwd();

/** A production server in a process of its own, as `npm start` runs it. */
export type TestServer = {
  origin: string;
  setupLink: string | null;
  /** Everything that it has printed so far. */
  output: () => string;
  /** SIGTERM; resolves with the exit code. */
  stop: () => Promise<number | null>;
  /** SIGKILL: the death of the server process, with PostgreSQL left behind. */
  kill: () => Promise<void>;
  /** SIGSTOP: it takes connections and says nothing, as a network that swallows packets; returns what ends it. */
  freeze: () => () => void;
};

/** Starts a server with these environment variables on a free port, and waits until it says that it is ready. */
export async function startTestServer(env: Record<string, string>): Promise<TestServer> {
  if (!existsSync(join(projectRoot, '.next', 'BUILD_ID'))) {
    throw new Error('There is no production build: run npm test, or npx next build first.');
  }
  const isNew = env.REELKIN_DATA !== undefined && !existsSync(join(env.REELKIN_DATA, 'postgres'));
  const child = spawn(process.execPath, ['--import', 'tsx', 'scripts/serve.ts'], {
    cwd: projectRoot,
    env: { ...withoutOwnSettings(process.env), NODE_ENV: 'production', PORT: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8');
    stream.on('data', (text: string) => {
      output += text;
    });
  }
  const exited = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const origin = await waitForOrigin(child, () => output);
  return {
    origin,
    setupLink: await waitForSetupLink(() => output, isNew ? startLimitMs : 2000),
    output: () => output,
    stop() {
      child.kill('SIGTERM');
      return exited;
    },
    async kill() {
      child.kill('SIGKILL');
      await exited;
    },
    freeze() {
      child.kill('SIGSTOP');
      return () => child.kill('SIGCONT');
    },
  };
}

/** Vitest's environment without what would lead a server to another database or mode. */
function withoutOwnSettings(variables: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  const { DATABASE_URL, REELKIN_DATA, REELKIN_DEMO, REELKIN_API_TOKEN, REELKIN_LAN, HOST, VITEST, ...rest } =
    variables;
  return rest;
}

async function waitForOrigin(child: ChildProcess, output: () => string): Promise<string> {
  const deadline = performance.now() + startLimitMs;
  while (performance.now() < deadline) {
    const origin = /ready at (https?:\S+)/.exec(output())?.[1];
    if (origin !== undefined) return origin;
    if (child.exitCode !== null) throw new Error(`The server ended with ${child.exitCode}:\n${output()}`);
    await pause();
  }
  child.kill('SIGTERM');
  throw new Error(`The server was not ready after ${startLimitMs / 1000} s:\n${output()}`);
}

/** The link follows the ready line when there is no administrator yet, as in a new folder, and not at all otherwise. */
async function waitForSetupLink(output: () => string, limitMs: number): Promise<string | null> {
  const deadline = performance.now() + limitMs;
  while (performance.now() < deadline) {
    const link = /first one here, once: (https?:\S+)/.exec(output())?.[1];
    if (link !== undefined) return link;
    await pause();
  }
  return null;
}

function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 50));
}
