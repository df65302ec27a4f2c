import { DEMO_PEOPLE } from '@/scripts/demo/people';

const HEADINGS = ['badge', 'PIN', 'password', 'role', 'name'] as const;

/** The demo's people with what they sign in with, as lines of a table. */
export function peopleTable(): string[] {
  const rows = DEMO_PEOPLE.map(({ badge, pin, password, role, name }) => [
    badge,
    pin,
    password ?? '–',
    role,
    name,
  ]);
  const all = [[...HEADINGS], ...rows];
  const widths = HEADINGS.map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  return all.map((row) =>
    `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
  );
}
