import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

type Subject = 'item' | 'lot' | 'part' | 'station' | 'operator';

/** The name of an answer's file: what it is about and when it was asked, such as `where-used RL001187 2026-03-20T1801Z.csv`. */
export function csvName(
  { item, lot, part, station, operator }: Pick<WhereUsedQuestion, Subject>,
  now: Date,
  kind: 'where-used' | 'difference' = 'where-used',
): string {
  const about = [item, lot, part, station, operator].filter((code) => code !== undefined).join(' ');
  const time = `${now.toISOString().slice(0, 16).replace(':', '')}Z`;
  // A header holds ASCII only, and a file's name no separator of folders.
  const safe = about.replaceAll(/[^A-Za-z0-9._ -]/g, '_').slice(0, 120);
  return `${[kind, safe, time].filter((word) => word !== '').join(' ')}.csv`;
}
