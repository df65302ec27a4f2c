import { z } from 'zod';
import { findWrongParts } from '@/lib/data/balance/find-balance-windows';
import { findGaps, findGapWindows } from '@/lib/data/balance/find-gap-windows';
import { findReelStays } from '@/lib/data/balance/find-reel-stays';
import { admitDirectDraws, admitItems } from '@/lib/data/moment/admit-items';
import { admitPasses, findPassing, findTimesOf, type StationTime } from '@/lib/data/moment/admit-passes';
import { admitSlots, findSlotsOf, slotSchema } from '@/lib/data/moment/admit-slots';
import { admitIdentities } from '@/lib/data/moment/admit-units';
import type { MomentRecord } from '@/lib/data/moment/moment-record';

const itemSchema = z.object({ item: z.string() });

/**
 * Admits what counts say of some items: those and the use of these reels and of the ones beside them, and of all reels
 * of a part whose counts disagree.
 */
export async function admitBalances(record: MomentRecord, items: readonly string[]): Promise<void> {
  const { db, plant } = record;
  if (!plant.weighs) return;
  await admitReels(record, items);
  const wrong = await findWrongParts(db, { plant, items });
  if (wrong !== null) await admitReels(record, await findReelsOfParts(record, wrong.parts));
}

/** Admits what stood at stations at which devices owed events, and what it is. */
export async function admitGaps(record: MomentRecord, stations: readonly string[]): Promise<void> {
  const { db, plant } = record;
  const gaps = await findGaps(db, { plant, stations });
  await admitStations(
    record,
    gaps.map(({ station }) => station),
  );
  const windows = await findGapWindows(db, { plant, stations });
  await admitItems(
    record,
    windows.flatMap((window) => window.items),
  );
}

/** Admits what reels and those beside them in their slots are weighed by. */
async function admitReels(record: MomentRecord, items: readonly string[]): Promise<void> {
  const { reels, times } = await admitUse(record, items);
  await admitItems(record, await findSplicedItems(record));
  await admitDirectDraws(record, reels);
  await admitPasses(record, times);
  await admitIdentities(record, await findPassing(record, times, { known: 'then' }));
}

/** Admits the slots of reels, and finds the reels beside them there, and when all of them may have been used. */
export async function admitUse(
  record: MomentRecord,
  items: readonly string[],
): Promise<{ reels: string[]; times: StationTime[] }> {
  await admitSlots(record, await findSlotsOf(record, items));
  const stays = await findReelStays(record.db, items);
  const reels = [...new Set([...items, ...stays.map(({ item }) => item)])];
  await admitSlots(record, await findSlotsOf(record, reels));
  await admitItems(record, reels);
  return { reels, times: await findTimesOf(record, reels) };
}

/** Items that splices brought: what they are decides which units use up the grey zone. */
export async function findSplicedItems({ live }: MomentRecord): Promise<string[]> {
  const { rows } = await live.query('select distinct item from pg_temp.mount where is_spliced');
  return rows.map((row) => itemSchema.parse(row).item);
}

/** Reels of some parts by any knowledge of them. */
export async function findReelsOfParts({ live }: MomentRecord, parts: readonly string[]): Promise<string[]> {
  const { rows } = await live.query(
    `select distinct body ->> 'item' as item from log.event
     where type = 'item.received' and body ->> 'part' = any($1)`,
    [parts],
  );
  return rows.map((row) => itemSchema.parse(row).item);
}

/** Admits all that stood at stations. */
export async function admitStations(record: MomentRecord, stations: readonly string[]): Promise<void> {
  if (stations.length === 0) return;
  const { rows } = await record.live.query(
    `select distinct station, slot from read.mount where station = any($1)
     union
     select station, (body ->> 'slot') collate "C" from pg_temp.undone
     where type in ('item.mounted', 'item.spliced') and station = any($1)`,
    [stations],
  );
  await admitSlots(
    record,
    rows.map((row) => slotSchema.parse(row)),
  );
}
