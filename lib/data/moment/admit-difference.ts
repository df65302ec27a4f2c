import { z } from 'zod';
import { findTimesAround, scannersOf } from '@/lib/data/balance/find-gap-windows';
import { admitUse, findReelsOfParts, findSplicedItems } from '@/lib/data/moment/admit-doubt';
import { admitDirectDraws, admitItems } from '@/lib/data/moment/admit-items';
import { admitPasses, findPassing, type StationTime } from '@/lib/data/moment/admit-passes';
import { admittedSlots } from '@/lib/data/moment/admit-slots';
import { admitBonds, admitIdentities } from '@/lib/data/moment/admit-units';
import { admitThings, isAboutThings, workedUnits } from '@/lib/data/moment/admit-where-used';
import { withInnerUnits, withOuterUnits } from '@/lib/data/moment/find-family';
import type { Scope } from '@/lib/data/moment/find-late';
import { findLateNumbers, type LateNumber } from '@/lib/data/moment/find-late-numbers';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { analyzeMomentTables } from '@/lib/data/moment/moment-tables';
import { gapsOf } from '@/lib/domain/devices/arrived-numbers';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

/** Most units that are weighed again and again on the way from one answer to the other. */
const WEIGHED_MAX = 20_000;

const codeSchema = z.object({ code: z.string() });

/** A later moment: a position of the log, and when it was (microseconds). */
type Until = { to: number; toUs: number };

/** What can bear on a difference; `isWeighed` is false where the counts would be too much to weigh. */
export type Between = { scope: Scope; numbers: LateNumber[]; isWeighed: boolean };

/**
 * Admits what can bear on who is in a where-used answer and how, at the record's moment or any later one up to `until`:
 * also what was voided or cut short meanwhile, and what counts and gaps of devices may say in between. Returns the
 * number of units instead when there are more than `unitsMax`.
 */
export async function admitDifference(
  record: MomentRecord,
  question: WhereUsedQuestion,
  { until, unitsMax }: { until: Until; unitsMax: number },
): Promise<Between | { units: number }> {
  const { items, named, times } = isAboutThings(question)
    ? await admitThings(record, question)
    : { items: [], named: [], times: [] };
  const counts = await admitCounts(record, items);
  const gaps = await admitGapTimes(record, { items, until });
  const drawing = isAboutThings(question)
    ? [
        ...(await passingAnyTime(record, [...times, ...counts.times, ...gaps.times])),
        ...(await directly(record, [...named, ...counts.reels])),
      ]
    : await workedUnits(record, question, until.to);
  const around = await withOuterUnits(record, drawing);
  const units = await withInnerUnits(record, around);
  if (units.length > unitsMax) return { units: units.length };
  await admitItems(record, await findSplicedItems(record));
  await admitDirectDraws(record, counts.reels);
  await admitPasses(record, [...times, ...counts.times, ...gaps.times]);
  await admitIdentities(record, units);
  await admitBonds(record, units);
  await analyzeMomentTables(record.live);
  const slots = admittedSlots(record);
  const scope = {
    units,
    stations: isAboutThings(question) ? [...new Set(slots.map(({ station }) => station))] : null,
    slots,
    items: [...new Set([...named, ...counts.reels, ...(await findSplicedItems(record))])],
    weighs: counts.reels.length > 0,
  };
  return { scope, numbers: gaps.late, isWeighed: counts.isWeighed };
}

/** Admits all reels of the parts of some items: any of them may come to disagree on the way. */
async function admitCounts(
  record: MomentRecord,
  items: readonly string[],
): Promise<{ reels: string[]; times: StationTime[]; isWeighed: boolean }> {
  const { plant } = record;
  if (!plant.weighs || items.length === 0) return { reels: [], times: [], isWeighed: true };
  const near = await admitUse(record, items);
  const parts = (await findPartsOf(record, near.reels)).filter((part) => plant.attritionOf(part) !== null);
  if (parts.length === 0) return { reels: [], times: [], isWeighed: true };
  const all = await admitUse(record, [...near.reels, ...(await findReelsOfParts(record, parts))]);
  const passing = await findPassing(record, all.times, { known: 'now' });
  if (passing.length > WEIGHED_MAX) return { reels: [], times: [], isWeighed: false };
  return { ...all, isWeighed: true };
}

/** What the devices that scan at the items' stations came to owe, and when it may have happened. */
async function admitGapTimes(
  record: MomentRecord,
  { items, until }: { items: readonly string[]; until: Until },
): Promise<{ late: LateNumber[]; times: StationTime[] }> {
  if (items.length === 0) return { late: [], times: [] };
  const stations = [...new Set(admittedSlots(record).map(({ station }) => station))];
  const scanned = scannersOf({ plant: record.plant, stations });
  if (scanned.length === 0) return { late: [], times: [] };
  const devices = [...new Set(scanned.map(({ device }) => device))];
  const { late, states } = await findLateNumbers(record, devices, until);
  const gaps = states.flatMap(({ device, numbers }) =>
    gapsOf(numbers).map(([from, to]) => ({ device, from, to })),
  );
  const owed = await findTimesAround(record.live, gaps);
  const times = scanned.flatMap(({ station, device }) =>
    owed
      .filter((each) => each.device === device)
      .map(({ between }) => ({ station, lowUs: between.min, highUs: between.max + 1 })),
  );
  return { late, times };
}

/** Units that passed in some times by what is known now, was known then, or came and was voided in between. */
async function passingAnyTime(record: MomentRecord, times: readonly StationTime[]): Promise<string[]> {
  const now = await findPassing(record, times, { known: 'now' });
  const undone = await codes(
    record,
    `select distinct unit as code from pg_temp.undone where unit is not null`,
    [],
  );
  return [...new Set([...now, ...undone])];
}

async function directly(record: MomentRecord, items: readonly string[]): Promise<string[]> {
  return codes(record, 'select distinct unit as code from read.direct_draw where item = any($1)', [items]);
}

async function findPartsOf(record: MomentRecord, items: readonly string[]): Promise<string[]> {
  return codes(
    record,
    `select distinct body ->> 'part' as code from log.event
     where type = 'item.received' and (body ->> 'item') collate "C" = any($1) and body ? 'part'`,
    [items],
  );
}

async function codes({ live }: MomentRecord, text: string, values: unknown[]): Promise<string[]> {
  const { rows } = await live.query(text, values);
  return rows.map((row) => codeSchema.parse(row).code);
}
