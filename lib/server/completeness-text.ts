import type { Completeness } from '@/lib/domain/genealogy/answer';

/**
 * Name of the last column of every CSV of an answer: as of when it is complete, or which devices owe which events, and
 * what is lost for good. In the heading it is told even where there is no row; the column says `yes` or `no`, so that
 * rows taken elsewhere keep it.
 */
export function completenessText({ asOf, complete, owing, lost }: Completeness): string {
  if (complete) return `complete as of ${asOf}`;
  const debts = owing.map(({ device, missing }) => `${device} owes ${rangesText(missing)}`);
  const losses = lost.map(
    ({ device, missing, highest }) =>
      `${device} was lost with ${rangesText([...missing, [highest + 1, null]])} for good`,
  );
  return `not complete as of ${asOf}: ${[...debts, ...losses].join('; ')}`;
}

/** `3-5 9 12-`: from 12 on, nobody knows how far. */
function rangesText(ranges: readonly (readonly [number, number | null])[]): string {
  return ranges.map(([from, to]) => (from === to ? String(from) : `${from}-${to ?? ''}`)).join(' ');
}
