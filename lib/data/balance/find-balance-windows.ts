import { findDisagreements } from '@/lib/data/balance/find-disagreements';
import { findReels } from '@/lib/data/balance/find-reels';
import { weighReels } from '@/lib/data/balance/weigh-reels';
import type { Queryable } from '@/lib/data/pool';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Plant } from '@/lib/domain/plant/plant';

/**
 * The windows in which counts say that the record of some items, or of those beside them in a slot, is wrong. First
 * only these are weighed; while they agree, nothing else is looked at. Otherwise every reel of the disagreeing parts
 * is weighed over the time of the disagreement, so that all questions see the same evidence.
 */
export async function findBalanceWindows(
  db: Queryable,
  { plant, items }: { plant: Plant; items: readonly string[] },
): Promise<DoubtWindow[]> {
  const isWeighed = (plant.file.parts ?? []).some(({ attrition }) => attrition !== undefined);
  if (!isWeighed || items.length === 0) return [];
  const near = await weighReels(db, { plant, items });
  const wrong = near.balances.filter(({ verdict }) => verdict !== 'agrees');
  if (wrong.length === 0) return [];
  const parts = [...new Set(wrong.flatMap(({ part }) => (part === null ? [] : [part])))];
  const reels = await findReels(db, { parts });
  const ledger = await weighReels(db, {
    plant,
    items: [...new Set([...items, ...reels.keys()])],
    during: {
      min: Math.min(...wrong.map(({ from }) => from.lowUs)),
      max: Math.max(...wrong.map(({ to }) => to?.highUs ?? Number.POSITIVE_INFINITY)),
    },
  });
  const windows = (await findDisagreements(db, ledger)).flatMap(({ named }) =>
    named.flatMap(({ window }) => (window === null ? [] : [window])),
  );
  const unique = new Map(windows.map((window) => [JSON.stringify(window), window]));
  return [...unique.values()].filter((window) => window.items.some((item) => items.includes(item)));
}
