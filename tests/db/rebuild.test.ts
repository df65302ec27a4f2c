import { describe, expect, it } from 'vitest';
import { rebuild } from '@/lib/data/rebuild';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

describe('the read tables can be dropped and made again from the log, bit for bit', () => {
  for (const seed of [3, 11, 29, 47, 101, 211, 307, 401])
    it(`after a history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      await putPlant(plant, 'test');
      const numbered = events.map((event, index) => ({ ...event, device: 'tab-1', deviceSeq: index + 2 }));
      for (const batch of batches(seed, shuffle(seed, numbered), { repeats: 3 })) await recordHistory(batch);
      // Some under the gate too: what is refused is no part of the record, but its number has arrived.
      await recordHistory(
        events.slice(0, 20).map((event, index) => ({
          ...event,
          id: `0198c0de-0000-7000-9000-${String(index).padStart(12, '0')}`,
          gate: 'enforce',
          device: 'tab-2',
          deviceSeq: index + 1,
        })),
      );
      const before = await dumpReadTables(database().pool);
      expect(before.pass?.length).toBeGreaterThan(0);
      expect(before.flagged?.length).toBeGreaterThan(0);
      expect(before.hold?.length).toBeGreaterThan(0);
      expect(before.device?.length).toBe(2);
      const lines: string[] = [];
      await rebuild(fresh.ownerUrl, (line) => lines.push(line));
      expect(lines.at(-1)).toContain('100 %');
      expect(await dumpReadTables(database().pool)).toEqual(before);
      await closeDatabase();
      await fresh.drop();
    });
});
