import { availableParallelism } from 'node:os';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const projectRoot = dirname(fileURLToPath(import.meta.url));

// By itself vitest leaves one processor free, which is half of two.
const processorCount = availableParallelism();

/** Files that wait more than they work, by the end of their path: begun last, one would go on alone. */
const SLOW_FILES = [
  'e2e/faults.test.ts',
  'e2e/offline-station.test.ts',
  'e2e/server-lifecycle.test.ts',
  'e2e/nothing-lost.test.ts',
];

/** Vitest's own order, by size where it remembers no durations, with the slow files in front. */
class SlowFilesFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isSlow = ({ moduleId }: TestSpecification) => SLOW_FILES.some((path) => moduleId.endsWith(path));
    return [...sorted.filter(isSlow), ...sorted.filter((file) => !isSlow(file))];
  }
}

/** Three kinds of tests: pure ones, those on a real PostgreSQL, and those on the production server in a browser. */
export default defineConfig({
  resolve: { alias: [{ find: /^@\//, replacement: `${projectRoot}/` }] },
  test: {
    sequence: { sequencer: SlowFilesFirst },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          maxWorkers: processorCount,
          // Pure files leave nothing behind: modules are read once a worker, which halves the work.
          isolate: false,
          include: ['tests/{unit,property,architecture,types}/**/*.test.{ts,tsx}'],
          // No test is timed: a limit only ends what hangs, on however slow a machine.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'db',
          maxWorkers: processorCount,
          include: ['tests/{db,reference}/**/*.test.ts'],
          globalSetup: ['tests/support/database-server.ts'],
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          // Two at a time: a file waits much, and whatever it starts is its own.
          maxWorkers: Math.min(2, processorCount),
          sequence: { groupOrder: 1 },
          testTimeout: 300_000,
          hookTimeout: 300_000,
          expect: { poll: { timeout: 30_000 } },
        },
      },
      {
        // By `npm run soak` alone: it takes as long as it takes.
        extends: true,
        test: { name: 'soak', include: ['tests/soak/**/*.test.ts'] },
      },
    ],
  },
});
