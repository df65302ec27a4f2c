import { z } from 'zod';
import { findDoubtWindows } from '@/lib/data/balance/find-doubt-windows';
import { admitBalances, findSplicedItems } from '@/lib/data/moment/admit-doubt';
import { admitDirectDraws, admitItems } from '@/lib/data/moment/admit-items';
import { admitPasses, findPassing, findTimesOf, type StationTime } from '@/lib/data/moment/admit-passes';
import { admitSlots, findSlotsOf } from '@/lib/data/moment/admit-slots';
import { admitIdentities, admitUnits } from '@/lib/data/moment/admit-units';
import { withOuterUnits } from '@/lib/data/moment/find-family';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { analyzeMomentTables } from '@/lib/data/moment/moment-tables';
import type { DoubtWindow } from '@/lib/domain/balance/doubt-window';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

const codeSchema = z.object({ code: z.string() });

/**
 * Admits to the record of a moment all that bears on a where-used answer: what was in the slots that the items were
 * ever in, the units that passed there, those around them, and where these are. Too much does no harm: the answer is
 * the question's own statement over it. Returns the number of units; beyond `unitsMax` they are not admitted.
 */
export async function admitWhereUsed(
  record: MomentRecord,
  question: WhereUsedQuestion,
  { unitsMax }: { unitsMax: number },
): Promise<number> {
  const units = isAboutThings(question)
    ? await drawingUnits(record, question, unitsMax)
    : await workedUnits(record, question);
  if (units.length > unitsMax) return units.length;
  const family = await withOuterUnits(record, units);
  if (family.length > unitsMax) return family.length;
  await admitUnits(record, family);
  await analyzeMomentTables(record.live);
  return family.length;
}

export function isAboutThings({ item, lot, part }: WhereUsedQuestion): boolean {
  return item !== undefined || lot !== undefined || part !== undefined;
}

async function codes({ live }: MomentRecord, text: string, values: unknown[]): Promise<string[]> {
  const { rows } = await live.query(text, values);
  return rows.map((row) => codeSchema.parse(row).code);
}

async function drawingUnits(
  record: MomentRecord,
  question: WhereUsedQuestion,
  unitsMax: number,
): Promise<string[]> {
  const { items, named, times } = await admitThings(record, question);
  const passing = await findPassing(record, times, { known: 'now' });
  if (passing.length > unitsMax) return passing;
  await admitPasses(record, times);
  // What they are decides whose pieces are counted, and who uses up the grey zone of a splice.
  await admitIdentities(record, passing);
  await admitBalances(record, items);
  const doubted = timesOf(await findDoubtWindows(record.db, question));
  await admitPasses(record, doubted);
  const drawing = await findPassing(record, [...times, ...doubted], { known: 'then' });
  return [...new Set([...drawing, ...(await directlyDrawing(record, named))])];
}

/** The wanted items and lots, with what their slots tell and when units can have drawn from them. */
export async function admitThings(
  record: MomentRecord,
  question: WhereUsedQuestion,
): Promise<{ items: string[]; named: string[]; times: StationTime[] }> {
  const items = await wantedItems(record, question);
  const named = question.lot === undefined ? items : [...items, question.lot];
  await admitSlots(record, await findSlotsOf(record, items));
  await admitItems(record, [...named, ...(await findSplicedItems(record))]);
  await admitDirectDraws(record, named);
  return { items, named, times: await findTimesOf(record, items) };
}

/** Items that the question wants by any knowledge of them: an item's lot or part may have been corrected since. */
async function wantedItems(record: MomentRecord, { item, lot, part }: WhereUsedQuestion): Promise<string[]> {
  if (item !== undefined) return [item];
  return codes(
    record,
    `select distinct body ->> 'item' as code from log.event
     where type = 'item.received'
       and ($1::text is null or body ->> 'lot' = $1) and ($2::text is null or body ->> 'part' = $2)`,
    [lot ?? null, part ?? null],
  );
}

export function directlyDrawing(record: MomentRecord, items: readonly string[]): Promise<string[]> {
  return codes(record, 'select distinct unit as code from pg_temp.direct_draw where item = any($1)', [items]);
}

/** The times of windows, whose ends are inclusive. */
function timesOf(windows: readonly DoubtWindow[]): StationTime[] {
  return windows.map(({ station, lowUs, highUs }) => ({ station, lowUs, highUs: highUs + 1 }));
}

/** Units that were worked on at a station, by a person, in a time, as far as a position of the log tells. */
export function workedUnits(
  record: MomentRecord,
  { station, operator, from, to }: WhereUsedQuestion,
  knownTo = record.moment.knownTo,
): Promise<string[]> {
  return codes(
    record,
    `select distinct e.unit as code from log.event e
     where e.type = 'unit.processed' and e.position <= $5
       and ($1::text is null or e.station = $1) and ($2::text is null or e.operator = $2)
       and ($3::timestamptz is null or e.at + make_interval(secs => e.uncertainty_ms / 1000.0) >= $3)
       and ($4::timestamptz is null or e.at - make_interval(secs => e.uncertainty_ms / 1000.0) <= $4)`,
    [station ?? null, operator ?? null, from ?? null, to ?? null, knownTo],
  );
}
