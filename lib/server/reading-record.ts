import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { openRecordCache, type RecordCache } from '@/lib/data/record/record-cache';
import { onSnapshot } from '@/lib/data/transaction';
import type { Plant } from '@/lib/domain/plant/plant';
import { database } from '@/lib/server/database';

/** A snapshot of the record, and what was read of it so far. */
export type RecordRead = { db: Queryable; plant: Plant; cache: RecordCache };

/** Answers from one snapshot of the record, so that what the gate says fits what is shown beside it. */
export function readingRecord<T>(answer: (record: RecordRead) => Promise<T>): Promise<T> {
  return onSnapshot(database().pool, async (db) =>
    answer({ db, plant: (await loadPlant(db)).plant, cache: openRecordCache(db) }),
  );
}
