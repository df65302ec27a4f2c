import type { Arriving } from '@/lib/data/log/insert-events';
import { logRow } from '@/lib/data/log/insert-events';
import { openPool } from '@/lib/data/pool';
import { CopyRows } from '@/lib/data/rebuild/copy-rows';
import { setIndexesAside } from '@/lib/data/rebuild/set-indexes-aside';
import { asWriter } from '@/lib/data/transaction';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import { generateEvents } from '@/scripts/bench/line/generate-events';

const REPORTED_EACH = 500_000;

/** Puts the history of so many units into an empty log through COPY; returns how many events that were. */
export function loadHistory(
  ownerUrl: string,
  unitCount: number,
  report: (line: string) => void,
): Promise<number> {
  return loadEvents(ownerUrl, generateEvents(unitCount), report);
}

/** Puts events into an empty log through COPY; returns how many they were. */
export async function loadEvents(
  ownerUrl: string,
  events: Iterable<WireEvent>,
  report: (line: string) => void,
): Promise<number> {
  const pool = openPool({ url: ownerUrl, connectionCountMax: 1, use: 'plain' });
  try {
    const count = await asWriter(pool, async (db) => {
      await db.query(`set local maintenance_work_mem = '1GB'`);
      const makeIndexes = await setIndexesAside(db, 'log');
      const rows = new CopyRows(db.client);
      let loaded = 0;
      for (const event of events) {
        const row = arrivedRow({ event: toLogged(event), recordedBy: 'bench' });
        await rows.add('log.event', Object.keys(row), [row]);
        loaded += 1;
        if (loaded % REPORTED_EACH === 0) report(`${loaded} events in the log`);
      }
      await rows.end();
      report(`${loaded} events in the log; making its indexes`);
      await makeIndexes();
      return loaded;
    });
    await pool.query('vacuum (analyze) log.event');
    return count;
  } finally {
    await pool.end();
  }
}

/** Every event of the history arrived when it happened. */
function arrivedRow(arriving: Arriving) {
  const row = logRow(arriving);
  return { ...row, recorded_at: row.at };
}
