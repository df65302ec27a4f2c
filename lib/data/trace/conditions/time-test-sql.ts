import type { Parameter } from '@/lib/data/trace/conditions/parameters';
import { formatInstant, instantOf } from '@/lib/domain/time';

const DOUBT = 'make_interval(secs => e.uncertainty_ms / 1000.0)';

/** Tests on an event's time with its doubt: in while it cannot be excluded, certain while it cannot be otherwise. */
export function timeTestSql(
  { from, to }: { from?: string | undefined; to?: string | undefined },
  parameter: Parameter,
): { tests: string[]; certain: string } {
  const tests: string[] = [];
  const certain: string[] = [];
  const instant = (text: string) => parameter(formatInstant(instantOf(text)), 'timestamptz');
  if (from !== undefined) {
    const value = instant(from);
    tests.push(`e.at + ${DOUBT} >= ${value}`);
    certain.push(`e.at - ${DOUBT} >= ${value}`);
  }
  if (to !== undefined) {
    const value = instant(to);
    tests.push(`e.at - ${DOUBT} <= ${value}`);
    certain.push(`e.at + ${DOUBT} <= ${value}`);
  }
  return { tests, certain: certain.join(' and ') || 'true' };
}
