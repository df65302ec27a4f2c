import type { Condition } from '@/lib/domain/genealogy/narrow-question';

/** A condition in one line, as a file's heading says it: `must not repaired position=U7`. */
export function conditionText({ must, kind, ...facts }: Condition): string {
  const words = Object.entries(facts).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}=${value}`],
  );
  return [must ? 'must' : 'must not', kind, ...words].join(' ');
}
