import { findDoubtWindows } from '@/lib/data/balance/find-doubt-windows';
import type { Queryable } from '@/lib/data/pool';
import { narrowStatement } from '@/lib/data/trace/conditions/narrow-sql';
import type { Statement } from '@/lib/data/trace/where-used-sql';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import type { Plant } from '@/lib/domain/plant/plant';

/** The statement of a narrowing, with the windows in which the record itself is in doubt about its items. */
export async function prepareNarrow(
  db: Queryable,
  conditions: readonly Condition[],
  plant: Plant,
): Promise<Statement> {
  const windows = new Map<Condition, DoubtWindow[]>();
  for (const condition of conditions) {
    if (condition.kind !== 'used') continue;
    const { must: _, kind: __, ...wanted } = condition;
    windows.set(condition, await findDoubtWindows(db, { ...wanted, limit: 1 }));
  }
  return narrowStatement(conditions, { plant, windowsOf: (condition) => windows.get(condition) ?? [] });
}
