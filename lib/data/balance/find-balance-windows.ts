import { findDisagreements } from '@/lib/data/balance/find-disagreements';
import { findReels } from '@/lib/data/balance/find-reels';
import { weighReels } from '@/lib/data/balance/weigh-reels';
import type { Queryable } from '@/lib/data/pool';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Range } from '@/lib/domain/balance/ledger';
import type { Plant } from '@/lib/domain/plant/plant';

type Wanted = { plant: Plant; items: readonly string[] };

/**
 * The windows in which counts say that the record of some items, or of those beside them in a slot, is wrong. First
 * only these are weighed; while they agree, nothing else is looked at. Otherwise every reel of the disagreeing parts
 * is weighed over the time of the disagreement, so that all questions see the same evidence.
 */
export async function findBalanceWindows(db: Queryable, { plant, items }: Wanted): Promise<DoubtWindow[]> {
  const wrong = await findWrongParts(db, { plant, items });
  if (wrong === null) return [];
  const reels = await findReels(db, { parts: wrong.parts });
  const ledger = await weighReels(db, {
    plant,
    items: [...new Set([...items, ...reels.keys()])],
    during: wrong.during,
  });
  const windows = (await findDisagreements(db, ledger)).flatMap(({ named }) =>
    named.flatMap(({ window }) => (window === null ? [] : [window])),
  );
  const unique = new Map(windows.map((window) => [JSON.stringify(window), window]));
  return [...unique.values()].filter((window) => window.items.some((item) => items.includes(item)));
}

/** The parts of which some items, or those beside them in a slot, have counts that disagree, and when; null for none. */
export async function findWrongParts(
  db: Queryable,
  { plant, items }: Wanted,
): Promise<{ parts: string[]; during: Range } | null> {
  if (!plant.weighs || items.length === 0) return null;
  const { balances } = await weighReels(db, { plant, items });
  const wrong = balances.filter(({ verdict }) => verdict !== 'agrees');
  if (wrong.length === 0) return null;
  return {
    parts: [...new Set(wrong.flatMap(({ part }) => (part === null ? [] : [part])))],
    during: {
      min: Math.min(...wrong.map(({ from }) => from.lowUs)),
      max: Math.max(...wrong.map(({ to }) => to?.highUs ?? Number.POSITIVE_INFINITY)),
    },
  };
}
