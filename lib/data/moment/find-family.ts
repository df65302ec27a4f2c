import { z } from 'zod';
import type { MomentRecord } from '@/lib/data/moment/moment-record';

/** Deepest chain of units that is followed. */
const DEPTH_MAX = 64;
const codeSchema = z.object({ code: z.string() });

/** Units that others went into, as sub-assemblies or by salvage, by any knowledge of it. */
const AROUND = `
  select outer_unit as code from read.joining where inner_unit = any($1)
  union
  select unit from read.salvage where from_unit = any($1)
  union
  select body ->> 'into' from pg_temp.undone where type = 'unit.joined' and unit = any($1)
  union
  select unit from pg_temp.undone where type = 'part.installed' and body ->> 'fromUnit' = any($1)`;

/** Units that were in others or gave them a part. */
const INSIDE = `
  select inner_unit as code from read.joining where outer_unit = any($1)
  union
  select from_unit from read.salvage where unit = any($1)
  union
  select unit from pg_temp.undone where type = 'unit.joined' and body ->> 'into' = any($1)
  union
  select body ->> 'fromUnit' from pg_temp.undone
  where type = 'part.installed' and body ? 'fromUnit' and unit = any($1)`;

const DONORS = `
  select from_unit as code from read.salvage where unit = any($1)
  union
  select body ->> 'fromUnit' from pg_temp.undone
  where type = 'part.installed' and body ? 'fromUnit' and unit = any($1)`;

/** The units with those that they ever went into, as sub-assemblies or by salvage, at any depth. */
export function withOuterUnits(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  return withReached(record, units, AROUND);
}

/** The units with those that were ever inside them or gave them a part, at any depth. */
export function withInnerUnits(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  return withReached(record, units, INSIDE);
}

/** The units with those that parts were ever taken from for them, at any depth. */
export function withDonors(record: MomentRecord, units: readonly string[]): Promise<string[]> {
  return withReached(record, units, DONORS);
}

async function withReached(
  { live }: MomentRecord,
  units: readonly string[],
  step: string,
): Promise<string[]> {
  const family = new Set(units);
  let level = [...family];
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    const { rows } = await live.query(step, [level]);
    level = rows.map((row) => codeSchema.parse(row).code).filter((unit) => !family.has(unit));
    for (const unit of level) family.add(unit);
  }
  return [...family];
}
