import './bootstrap/require-node.mjs';
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from './bootstrap/find-browser.mjs';
import { prepareProject } from './bootstrap/prepare-project.mjs';
import { projectRoot } from './bootstrap/project-root.mjs';
import { runCommand } from './bootstrap/run-command.mjs';
import { runStep, StepFailed } from './bootstrap/run-step.mjs';

const node = process.execPath;
const counts = { passed: 0, failed: 0 };

await runCommand(async () => {
  const isPrepared = await check('packages and database client', () => prepareProject({ build: false }));
  if (isPrepared) await runChecks();
  console.log(`${counts.passed} passed, ${counts.failed} failed`);
  process.exit(counts.failed === 0 ? 0 : 1);
});

/** `npm test`: every static check counts as one, then every test; all run, whatever fails before them. */
async function runChecks() {
  let browser = null;
  await check('browser', async () => {
    browser = await requireBrowser();
  });
  await check('style', () =>
    runStep({
      doing: 'Checking style (biome)',
      done: 'Style checked',
      command: node,
      args: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings'],
    }),
  );
  const isBuilt = await check('production build', () => prepareProject({ build: true }));
  await check('types', () =>
    runStep({
      doing: 'Checking types (tsc)',
      done: 'Types checked',
      command: node,
      args: ['node_modules/typescript/bin/tsc', '--noEmit'],
    }),
  );
  await runTests({ browser, withBrowserTests: isBuilt && browser !== null });
}

/** Runs one check, counts it and shows why it failed; true when it passed. */
async function check(name, run) {
  try {
    await run();
    counts.passed += 1;
    return true;
  } catch (error) {
    counts.failed += 1;
    if (error instanceof StepFailed && error.output !== '') console.error(error.output);
    console.error(`FAILED ${name}: ${error instanceof StepFailed ? error.message : (error.stack ?? error)}`);
    return false;
  }
}

async function requireBrowser() {
  const found = await findBrowser();
  if (found !== null) return found;
  const advice =
    'Install Chromium (Debian: apt-get install chromium-headless-shell), or name one in CHROMIUM_PATH, and run npm test again.';
  if (process.env.CHROMIUM_PATH)
    throw new StepFailed(`CHROMIUM_PATH names no browser that runs. ${advice}`, '');
  try {
    await runStep({
      doing: 'Downloading a browser for the tests (playwright install chromium)',
      done: 'Browser downloaded',
      command: node,
      args: ['node_modules/playwright/cli.js', 'install', 'chromium'],
    });
  } catch (error) {
    throw new StepFailed(
      `No browser was found, and Playwright could not download one. ${advice}`,
      error.output ?? '',
    );
  }
  const downloaded = await findBrowser();
  if (downloaded !== null) return downloaded;
  throw new StepFailed(`The downloaded browser does not run: system libraries are missing. ${advice}`, '');
}

/** Runs vitest with its output in view and adds its counts; without a browser or a build, all but the e2e tests. */
async function runTests({ browser, withBrowserTests }) {
  const folder = mkdtempSync(join(tmpdir(), 'reelkin-results-'));
  const resultPath = join(folder, 'results.json');
  const projects = withBrowserTests ? ['unit', 'db', 'e2e'] : ['unit', 'db'];
  try {
    const code = await runVitest({ projects, resultPath, browser });
    countResults(readResults(resultPath), code);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function runVitest({ projects, resultPath, browser }) {
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${resultPath}`];
  const child = spawn(
    node,
    ['node_modules/vitest/vitest.mjs', ...args, ...projects.map((name) => `--project=${name}`)],
    {
      cwd: projectRoot,
      env: {
        ...process.env,
        CI: 'true',
        NEXT_TELEMETRY_DISABLED: '1',
        ...(browser && { CHROMIUM_PATH: browser }),
      },
      stdio: ['ignore', 'inherit', 'inherit'],
    },
  );
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  return new Promise((resolve) => {
    child.on('error', () => resolve(1));
    child.on('close', (code, signal) => resolve(code ?? signal));
  });
}

function readResults(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

/** A run that read no test, or failed without a failed test (a file that does not load), is a failure too. */
function countResults(results, code) {
  const passed = results?.numPassedTests ?? 0;
  const failed = results?.numFailedTests ?? 0;
  const skipped = (results?.numPendingTests ?? 0) + (results?.numTodoTests ?? 0);
  const isSilentFailure = failed === 0 && (code !== 0 || passed === 0);
  if (isSilentFailure) console.error(`FAILED tests: vitest ended with ${code} after ${passed} passed tests`);
  if (skipped > 0) console.log(`${skipped} tests were skipped; the lines above say which and why`);
  counts.passed += passed;
  counts.failed += failed + (isSilentFailure ? 1 : 0);
}
