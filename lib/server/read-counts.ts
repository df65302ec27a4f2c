import { type Disagreement, findDisagreements, type Named } from '@/lib/data/balance/find-disagreements';
import { findReelPasses } from '@/lib/data/balance/find-reel-passes';
import { findReels } from '@/lib/data/balance/find-reels';
import { weighReels } from '@/lib/data/balance/weigh-reels';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { onSnapshot } from '@/lib/data/transaction';
import type { CountCheck, DisagreeingCount, LeftPoint, MissedChange } from '@/lib/domain/balance/count-check';
import type { Balance, Ledger, ReelPass } from '@/lib/domain/balance/ledger';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

const DAYS = 30;
const DAY_US = 86_400_000_000;
const CURVE_POINTS_MAX = 120;

/** Every reel whose counts of the last thirty days disagree with its use, newest first, and what probably happened. */
export function readCounts(): Promise<CountCheck> {
  const nowUs = Date.now() * 1000;
  const sinceUs = nowUs - DAYS * DAY_US;
  return onSnapshot(database().pool, async (db) => {
    const { plant } = await loadPlant(db);
    const parts = (plant.file.parts ?? []).flatMap(({ number, attrition }) =>
      attrition === undefined ? [] : [number],
    );
    const frame = { since: formatInstant(sinceUs), now: formatInstant(nowUs) };
    if (parts.length === 0) return { ...frame, isWeighed: false, reels: 0, disagreeing: [] };
    const reels = await findReels(db, { parts });
    const during = { min: sinceUs, max: Number.POSITIVE_INFINITY };
    const ledger = await weighReels(db, { plant, items: [...reels.keys()], during });
    const found = await findDisagreements(db, ledger);
    const passesOf = await findReelPasses(db, [...new Set(found.flatMap((each) => ownStays(ledger, each)))]);
    const disagreeing = found
      .sort((a, b) => lastUs(b.finding.balance) - lastUs(a.finding.balance))
      .map((each) =>
        toDisagreeing(
          each,
          ownStays(ledger, each).flatMap((stay) => passesOf.get(stay) ?? []),
        ),
      );
    return { ...frame, isWeighed: true, reels: reels.size, disagreeing };
  });
}

function ownStays({ stays }: Ledger, { finding }: Disagreement): string[] {
  return stays.flatMap(({ item, event }) => (item === finding.balance.item ? [event] : []));
}

function lastUs({ from, to }: Balance): number {
  return to?.atUs ?? from.atUs;
}

function toDisagreeing({ finding, named }: Disagreement, passes: readonly ReelPass[]): DisagreeingCount {
  const { item, part, attrition, used, from, to, moved, verdict } = finding.balance;
  const isSurplus = verdict === 'surplus';
  const expected = { min: Math.max(0, from.left - used.max * (1 + attrition)), max: from.left - used.min };
  return {
    item,
    part,
    verdict: isSurplus ? 'surplus' : 'deficit',
    attrition,
    used,
    expected,
    from: pointOf(from.atUs, from.left),
    to: to === null ? null : pointOf(to.atUs, to.left),
    pieces: isSurplus ? moved.min : expected.min - (to?.left ?? 0),
    missed: named.flatMap(missedChange),
    curve: curveOf(finding.balance, passes),
  };
}

function missedChange({ suspicion, window, passes }: Named): MissedChange[] {
  if (window === null) return [];
  const { part, other, stay } = suspicion;
  const story =
    other === null ? 'unknown' : ({ last: 'late', first: 'early', whole: 'never' } as const)[part];
  const { station, slot, lowUs, highUs } = window;
  const units = new Set(passes.map(({ unit }) => unit)).size;
  const times = { from: formatInstant(lowUs), to: formatInstant(highUs) };
  return [{ story, station, slot, recorded: stay.item, other, ...times, units }];
}

/** Remainder after each pass of the period, at most some of them: the first, the last, and evenly between. */
function curveOf({ from, to }: Balance, passes: readonly ReelPass[]): LeftPoint[] {
  let left = from.left;
  const points = passes
    .filter(({ lowUs, highUs }) => lowUs >= from.atUs && highUs <= (to?.atUs ?? Number.POSITIVE_INFINITY))
    .sort((a, b) => a.highUs - b.highUs)
    .map(({ highUs, pieces }) => {
      left -= pieces;
      return pointOf(highUs, left);
    });
  const step = Math.ceil(points.length / CURVE_POINTS_MAX);
  return points.filter((_, index) => index % step === 0 || index === points.length - 1);
}

function pointOf(atUs: number, left: number): LeftPoint {
  return { at: formatInstant(atUs), left };
}
