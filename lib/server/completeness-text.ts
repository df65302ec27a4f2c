import type { Owing } from '@/lib/domain/genealogy/answer';

/**
 * Name of the last column of every CSV of an answer: as of when it is complete, or which devices owe which events. In
 * the heading it is told even where there is no row; the column says `yes` or `no`, so that rows taken elsewhere keep it.
 */
export function completenessText(asOf: string, owing: readonly Owing[]): string {
  if (owing.length === 0) return `complete as of ${asOf}`;
  const debts = owing.map(({ device, missing }) => {
    const ranges = missing.map(([from, to]) => (from === to ? String(from) : `${from}-${to}`));
    return `${device} owes ${ranges.join(' ')}`;
  });
  return `not complete as of ${asOf}: ${debts.join('; ')}`;
}
