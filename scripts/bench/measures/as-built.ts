import type pg from 'pg';
import { asBuilt } from '@/lib/server/as-built';
import { unitCode } from '@/scripts/bench/line/bench-codes';
import { expectEqual } from '@/scripts/bench/models/canonical-answer';
import { textbookAsBuilt } from '@/scripts/bench/models/textbook-model';
import { type Timing, timeEach } from '@/scripts/bench/report/percentiles';

const UNITS_ASKED = 200;
const COMPARED = 100;
const STRENGTH = ['touched', 'formerly', 'contains'];

/** As-built of a unit, 93 draws and 25 stations: compares the draws, then times the whole records. */
export async function measureAsBuilt(
  pool: pg.Pool,
  unitCount: number,
  hasTextbook: boolean,
): Promise<Record<string, Timing>> {
  const units = Array.from({ length: UNITS_ASKED }, (_, index) => unitCode((index * 104_729) % unitCount));
  if (hasTextbook) await compareAsBuilt(pool, units.slice(0, COMPARED));
  const times: Record<string, Timing> = { Reelkin: await timeEach(units, (unit) => asBuilt(unit)) };
  if (hasTextbook) times.textbook = await timeEach(units, (unit) => textbookAsBuilt(pool, unit));
  return times;
}

/** Asks both models for units, and expects equal draws. */
export async function compareAsBuilt(pool: pg.Pool, units: readonly string[]): Promise<void> {
  for (const unit of units) {
    const answers = [
      { model: 'Reelkin', answer: strongest((await asBuilt(unit))?.draws ?? []) },
      { model: 'textbook', answer: strongest(await textbookAsBuilt(pool, unit)) },
    ];
    expectEqual(answers, `as-built of ${unit}`);
  }
}

/** Several draws of one item count as the strongest. */
function strongest(draws: readonly { item: string; relation: string; certainty: string }[]): string {
  const byItem = new Map<string, { relation: number; isCertain: boolean }>();
  for (const { item, relation, certainty } of draws) {
    const known = byItem.get(item) ?? { relation: 0, isCertain: false };
    byItem.set(item, {
      relation: Math.max(known.relation, STRENGTH.indexOf(relation)),
      isCertain: known.isCertain || certainty === 'certain',
    });
  }
  if (byItem.size === 0) throw new Error('The benchmark compared no draw at all.');
  return JSON.stringify([...byItem].sort(([a], [b]) => (a < b ? -1 : 1)));
}
