import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { projectRoot } from './project-root.mjs';

const SOURCE = 'lib/offline/worker/service-worker.ts';
const RESULT = '.next/service-worker.js';

/**
 * Bundles the service worker after `next build`, with the list of files that a tablet keeps: every script, style and
 * font of this build, what stands in `public` for a station, and the page that opens without a server.
 */
export async function buildServiceWorker() {
  const buildId = readFileSync(join(projectRoot, '.next/BUILD_ID'), 'utf8').trim();
  const files = [
    ...filesBelow('.next/static').map((path) => ({
      // Next puts a hash of the content, or the build, into each of these names.
      url: `/_next/static/${path}`,
      revision: null,
    })),
    ...publicFiles().map((path) => ({ url: `/${path}`, revision: hashOf(`public/${path}`) })),
    { url: '/offline', revision: buildId },
  ];
  await build({
    absWorkingDir: projectRoot,
    entryPoints: [SOURCE],
    outfile: RESULT,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: { js: `self.reelkinFiles=${JSON.stringify(files)};` },
  });
}

/** What a station needs of `public`: not the pictures of the README. */
function publicFiles() {
  return filesBelow('public').filter((path) => !path.startsWith('walk/'));
}

function filesBelow(folder) {
  return readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.map'))
    .map((entry) => join(entry.parentPath, entry.name).slice(join(projectRoot, folder).length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .sort();
}

function hashOf(path) {
  return createHash('sha256')
    .update(readFileSync(join(projectRoot, path)))
    .digest('hex')
    .slice(0, 16);
}
