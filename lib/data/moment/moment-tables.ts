import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';
import type { Moment } from '@/lib/domain/genealogy/moment';
import { formatInstant } from '@/lib/domain/time';

/** All read tables that tell of events, asked or not: none of today's is written to. Those of the plant are as they are. */
const TABLES = [
  'unit',
  'item',
  'mount',
  'splice',
  'unmount',
  'slot_doubt',
  'pass',
  'direct_draw',
  'removal',
  'salvage',
  'joining',
  'separation',
  'container',
  'hold',
  'flagged',
  'device',
  'device_retirement',
  'label_print',
] as const;

/** What else of the record statements name: `read.voided` is a view of what was voided by then. */
const VIEWS = ['voided'] as const;
const FUNCTIONS = ['grey_until', 'clearing_of'] as const;

const OF_THE_RECORD = new RegExp(
  String.raw`\bread\.(${[...TABLES, ...VIEWS, ...FUNCTIONS].join('|')})\b`,
  'g',
);
const functionSchema = z.object({ text: z.string() });

/**
 * Makes the tables and views of a moment, which only this connection sees; they go with the transaction. `played` holds
 * the positions of what arrived after the moment and counts nevertheless; `undone` the events whose voids came after it.
 */
export async function makeMomentTables(live: Queryable, { knownTo, untilUs }: Moment): Promise<void> {
  const isThere = (alias: string) =>
    `(${alias}.position <= ${knownTo} or ${alias}.position in (select position from pg_temp.played))`;
  const until = momentText(untilUs);
  await live.query(
    [
      ...TABLES.map((table) => `create temp table ${table} (like read.${table} including all)`),
      // A pass has no key of its own; here it may be wanted for several reasons.
      'create unique index on pg_temp.pass (event)',
      'create temp table played (position bigint primary key)',
      `create temp view moment_event as
         select e.* from log.event e where ${isThere('e')} and e.at <= '${until}'::timestamptz`,
      `create temp view voided as
         select v.event, v.void from read.voided v join log.event x on x.id = v.void and ${isThere('x')}`,
      `create temp table undone as
         select e.* from log.event e
         where e.type <> 'event.voided' and e.id in (
           select (v.body ->> 'event')::uuid from log.event v where v.type = 'event.voided' and v.position > ${knownTo}
         )`,
      'insert into pg_temp.slot_doubt select * from read.slot_doubt',
    ].join('; '),
  );
  const { rows } = await live.query(
    `select pg_get_functiondef(('read.' || name || '(uuid)')::regprocedure) as text from unnest($1::text[]) as f(name)`,
    [FUNCTIONS],
  );
  for (const row of rows) await live.query(ofMoment(functionSchema.parse(row).text));
}

/** Lets the planner know how much there is in the tables. */
export async function analyzeMomentTables(live: Queryable): Promise<void> {
  await live.query(`analyze ${TABLES.map((table) => `pg_temp.${table}`).join(', ')}`);
}

/** A statement on the record as one on the record of a moment. */
export function ofMoment(text: string): string {
  return text.replaceAll(OF_THE_RECORD, 'pg_temp.$1').replaceAll(/\blog\.event\b/g, 'pg_temp.moment_event');
}

/** A time as PostgreSQL takes it, infinity included. */
export function momentText(us: number): string {
  return us === Number.POSITIVE_INFINITY ? 'infinity' : formatInstant(us);
}
