import { z } from 'zod';
import { findItemHistories } from '@/lib/data/log/find-events';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { momentText } from '@/lib/data/moment/moment-tables';
import { itemRow } from '@/lib/data/record/refresh-item';

const itemSchema = z.object({ item: z.string() });

/** Admits what items are and how much is left of them; those of which anything came later are folded again. */
export async function admitItems(record: MomentRecord, items: Iterable<string>): Promise<void> {
  const fresh = record.take('item', items);
  if (fresh.length === 0) return;
  const { knownTo, untilUs } = record.moment;
  const { rows } = await record.live.query(
    `select body ->> 'item' as item from log.event
     where type like 'item.%' and (body ->> 'item') collate "C" = any($1)
       and (position > $2 or at > $3::timestamptz)
     union
     select body ->> 'item' from pg_temp.undone where type like 'item.%' and body ->> 'item' = any($1)`,
    [fresh, knownTo, momentText(untilUs)],
  );
  const changed = rows.map((row) => itemSchema.parse(row).item);
  await record.live.query(
    'insert into pg_temp.item select * from read.item where item = any($1) and item <> all($2)',
    [fresh, changed],
  );
  if (changed.length === 0) return;
  const histories = await findItemHistories(record.db, changed);
  const folded = changed.flatMap((item) => itemRow(item, histories.get(item) ?? []) ?? []);
  await record.live.query(
    'insert into pg_temp.item select * from jsonb_populate_recordset(null::read.item, $1::jsonb)',
    [JSON.stringify(folded)],
  );
}

/** Admits the draws that events name themselves: parts that were scanned, and lots of boards. */
export async function admitDirectDraws(record: MomentRecord, items: Iterable<string>): Promise<void> {
  const fresh = record.take('direct draw', items);
  if (fresh.length === 0) return;
  await record.live.query(
    `insert into pg_temp.direct_draw
     select d.* from read.direct_draw d join pg_temp.moment_event e on e.id = d.event
     where d.item = any($1)
     on conflict do nothing`,
    [fresh],
  );
}
