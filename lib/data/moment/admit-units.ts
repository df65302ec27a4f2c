import { z } from 'zod';
import { findContainerHistories, findUnitHistories } from '@/lib/data/log/find-events';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { momentText } from '@/lib/data/moment/moment-tables';
import { containerRow, shipContents } from '@/lib/data/record/refresh-container';
import { refreshJoinings } from '@/lib/data/record/refresh-joining';
import { writeUnits } from '@/lib/data/record/unit-rows';
import { foldUnit } from '@/lib/domain/units/fold-unit';

/** Deepest chain of containers that is followed. */
const DEPTH_MAX = 64;
/** Units whose histories are in memory at once. */
const UNITS_AT_ONCE = 1000;

const codeSchema = z.object({ code: z.string() });

async function codes(record: MomentRecord, text: string, values: unknown[]): Promise<string[]> {
  const { rows } = await record.live.query(text, values);
  return rows.map((row) => codeSchema.parse(row).code);
}

/** Admits what units are, which decides what they draw from slots; not where they are. */
export async function admitIdentities(record: MomentRecord, units: Iterable<string>): Promise<void> {
  const fresh = record.take('identity', units);
  if (fresh.length === 0) return;
  const changed = await changedUnits(record, fresh, `type = 'unit.started'`);
  await record.live.query(
    `insert into pg_temp.unit (unit, product, revision, state)
     select unit, product, revision, '{}' from read.unit where unit = any($1) and unit <> all($2)
     union all
     (select distinct on (e.unit) e.unit, e.body ->> 'product', e.body ->> 'revision', '{}'::jsonb
      from pg_temp.moment_event e
      where e.unit = any($2) and e.type = 'unit.started'
        and not exists (select from pg_temp.voided v where v.event = e.id)
      order by e.unit, e.at desc, e.id desc)
     on conflict do nothing`,
    [fresh, changed],
  );
}

/** Those of some units that have events of a kind that came or happened after the moment, or were voided after it. */
function changedUnits(record: MomentRecord, units: readonly string[], kind: string): Promise<string[]> {
  const { knownTo, untilUs } = record.moment;
  return codes(
    record,
    `select unit as code from log.event where unit = any($1) and position > $2 and ${kind}
     union
     select unit from log.event where unit = any($1) and at > $3::timestamptz and ${kind}
     union
     select unit from pg_temp.undone where unit = any($1) and ${kind}`,
    [units, knownTo, momentText(untilUs)],
  );
}

/** Admits which parts were removed from units or came from others, and which units were in each other. */
export async function admitBonds(record: MomentRecord, units: Iterable<string>): Promise<void> {
  const fresh = record.take('bond', units);
  if (fresh.length === 0) return;
  const sides = {
    removal: ['unit'],
    salvage: ['unit', 'from_unit'],
    joining: ['inner_unit', 'outer_unit'],
    separation: ['inner_unit', 'outer_unit'],
  };
  for (const [table, columns] of Object.entries(sides))
    for (const column of columns)
      await record.live.query(
        `insert into pg_temp.${table}
         select b.* from read.${table} b join pg_temp.moment_event e on e.id = b.event
         where b.${column} = any($1)
         on conflict do nothing`,
        [fresh],
      );
  await refreshJoinings(
    record.db,
    await codes(record, 'select distinct inner_unit as code from pg_temp.joining', []),
  );
}

/**
 * Admits units with where they were. Of whom nothing came later, the row is as it is today; all others are folded again,
 * which is what costs: some tenths of a millisecond each.
 */
export async function admitUnits(record: MomentRecord, units: Iterable<string>): Promise<void> {
  const fresh = record.take('unit', units);
  if (fresh.length === 0) return;
  record.take('identity', fresh);
  const changed = await changedUnits(record, fresh, 'true');
  await record.live.query('delete from pg_temp.unit where unit = any($1)', [fresh]);
  await record.live.query(
    'insert into pg_temp.unit select * from read.unit where unit = any($1) and unit <> all($2)',
    [fresh, changed],
  );
  await record.live.query('update pg_temp.unit set outermost = null where outermost is not null');
  for (let start = 0; start < changed.length; start += UNITS_AT_ONCE) {
    const part = changed.slice(start, start + UNITS_AT_ONCE);
    const histories = await findUnitHistories(record.db, part);
    const entries = [...histories].map(([unit, history]) => {
      const last = history.at(-1) ?? null;
      return [unit, { state: foldUnit(unit, history, record.plant), last }] as const;
    });
    await writeUnits(record.db, new Map(entries), record.plant);
  }
  await admitBonds(record, fresh);
  await refreshJoinings(
    record.db,
    await codes(record, 'select distinct inner_unit as code from pg_temp.joining', []),
  );
  await admitContainers(record);
}

/** Admits the containers of units, those around them, and how they were shipped. */
async function admitContainers(record: MomentRecord): Promise<void> {
  const { knownTo, untilUs } = record.moment;
  let level = await codes(
    record,
    'select distinct container as code from pg_temp.unit where container is not null',
    [],
  );
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    const fresh = record.take('container', level);
    const changed = await codes(
      record,
      `select body ->> 'container' as code from log.event
       where type like 'container.%' and (body ->> 'container') collate "C" = any($1)
         and (position > $2 or at > $3::timestamptz)
       union
       select body ->> 'container' from pg_temp.undone
       where type like 'container.%' and body ->> 'container' = any($1)`,
      [fresh, knownTo, momentText(untilUs)],
    );
    await record.live.query(
      'insert into pg_temp.container select * from read.container where container = any($1) and container <> all($2)',
      [fresh, changed],
    );
    const histories = await findContainerHistories(record.db, changed);
    const folded = [...histories].map(([container, history]) => containerRow(container, history));
    await record.live.query(
      'insert into pg_temp.container select * from jsonb_populate_recordset(null::read.container, $1::jsonb)',
      [JSON.stringify(folded)],
    );
    level = await codes(
      record,
      'select distinct inside as code from pg_temp.container where container = any($1) and inside is not null',
      [fresh],
    );
  }
  await shipContents(record.db, await codes(record, 'select container as code from pg_temp.container', []));
}
