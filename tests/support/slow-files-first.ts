import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that wait more than they work, by the end of their path: begun last, one would go on alone. */
const SLOW_FILES = [
  'e2e/faults.test.ts',
  'e2e/offline-station.test.ts',
  'e2e/server-lifecycle.test.ts',
  'e2e/nothing-lost.test.ts',
];

/** Vitest's own order, by size where it remembers no durations, with the slow files in front. */
export class SlowFilesFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isSlow = ({ moduleId }: TestSpecification) => SLOW_FILES.some((path) => moduleId.endsWith(path));
    return [...sorted.filter(isSlow), ...sorted.filter((file) => !isSlow(file))];
  }
}
