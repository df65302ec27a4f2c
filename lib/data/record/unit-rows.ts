import { z } from 'zod';
import { findUnitHistory } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import { readColumns, rowsSource } from '@/lib/data/rows';
import type { Plant } from '@/lib/domain/plant/plant';
import { formatInstant, type OrderKey } from '@/lib/domain/time';
import { foldUnit } from '@/lib/domain/units/fold-unit';
import { nextStep, openFailure } from '@/lib/domain/units/progress';
import { type UnitState, unitStateSchema } from '@/lib/domain/units/unit-state';

/** A unit's folded state with the key of its last event; `last` is null before the first. */
export type UnitEntry = { state: UnitState; last: OrderKey | null };

const rowSchema = z.object({
  unit: z.string(),
  state: unitStateSchema,
  last_at: z.number().nullable(),
  last_event: z.string().nullable(),
});

/** Folded units by code; a unit without events is absent. One row each by the primary key. */
export async function loadUnits(db: Queryable, units: readonly string[]): Promise<Map<string, UnitEntry>> {
  if (units.length === 0) return new Map();
  const { rows } = await db.query(
    'select unit, state, last_at, last_event from read.unit where unit = any($1)',
    [units],
  );
  return new Map(
    rows.map((row) => {
      const { unit, state, last_at, last_event } = rowSchema.parse(row);
      const last = last_at === null || last_event === null ? null : { atUs: last_at, id: last_event };
      return [unit, { state, last }];
    }),
  );
}

/** Folds a unit again from its history in the log. */
export async function foldFromLog(db: Queryable, unit: string, plant: Plant): Promise<UnitEntry> {
  const history = await findUnitHistory(db, unit);
  return { state: foldUnit(unit, history, plant), last: history.at(-1) ?? null };
}

/** A folded unit's row, with the columns that screens and answers select by. */
export function unitRow(unit: string, { state, last }: UnitEntry, plant: Plant) {
  const next = nextStep(unit, state, plant);
  return {
    unit,
    product: state.product,
    revision: state.revision,
    place: state.isScrapped ? 'scrapped' : state.placing,
    place_station: state.lastStation,
    container: state.container,
    next_step: next?.step ?? null,
    next_operation: next?.operation ?? null,
    open_failure: openFailure(state, plant)?.operation ?? null,
    last_at: last === null ? null : formatInstant(last.atUs),
    last_event: last?.id ?? null,
    state,
  };
}

const COLUMNS = readColumns(
  'unit text, product text, revision text, place text, place_station text, container text, next_step integer, next_operation text, open_failure text, last_at timestamptz, last_event uuid, state jsonb',
);
const CHANGED = COLUMNS.filter(({ name }) => name !== 'unit').map(({ name }) => `${name} = excluded.${name}`);

/** Writes folded units; one statement, whatever their number. */
export async function writeUnits(
  db: Queryable,
  entries: ReadonlyMap<string, UnitEntry>,
  plant: Plant,
): Promise<void> {
  if (entries.size === 0) return;
  const rows = [...entries].map(([unit, entry]) => unitRow(unit, entry, plant));
  const { names, select, from, values } = rowsSource(COLUMNS, rows);
  await db.query(
    `insert into read.unit (${names}) select ${select} from ${from}
     on conflict (unit) do update set ${CHANGED.join(', ')}`,
    values,
  );
}
