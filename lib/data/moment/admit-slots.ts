import { z } from 'zod';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { refreshSlots } from '@/lib/data/record/refresh-slot';

export const slotSchema = z.object({ station: z.string(), slot: z.string() });
export type Slot = z.infer<typeof slotSchema>;

/** Slots in which items ever were, by any knowledge of it, or to which something was spliced after them. */
export async function findSlotsOf(record: MomentRecord, items: readonly string[]): Promise<Slot[]> {
  const { rows } = await record.live.query(
    `select m.station, m.slot from read.mount m where m.item = any($1)
     union
     select m.station, m.slot from read.splice g join read.mount m on m.event = g.event where g.item = any($1)
     union
     select station, (body ->> 'slot') collate "C" from pg_temp.undone
     where type in ('item.mounted', 'item.spliced')
       and (body ->> 'item' = any($1) or body ->> 'from' = any($1) or body ->> 'to' = any($1))`,
    [items],
  );
  return rows.map((row) => slotSchema.parse(row));
}

/** Admits all that ever stood in slots. Cost: one row a change, whoever passed there. */
export async function admitSlots(record: MomentRecord, slots: readonly Slot[]): Promise<void> {
  const fresh = record
    .take(
      'slot',
      slots.map(({ station, slot }) => JSON.stringify([station, slot])),
    )
    .map(slotOf);
  if (fresh.length === 0) return;
  const values = [fresh.map(({ station }) => station), fresh.map(({ slot }) => slot)];
  const changes = (table: string) => `
    from unnest($1::text[], $2::text[]) as s(station, slot)
    join ${table} m on m.station = s.station collate "C" and m.slot = s.slot collate "C"`;
  for (const table of ['mount', 'unmount'])
    await record.live.query(
      `insert into pg_temp.${table}
       select m.* ${changes(`read.${table}`)} join pg_temp.moment_event e on e.id = m.event
       on conflict do nothing`,
      values,
    );
  await record.live.query(
    `insert into pg_temp.splice
     select g.* ${changes('pg_temp.mount')} join read.splice g on g.event = m.event where m.is_spliced
     on conflict do nothing`,
    values,
  );
  await refreshSlots(record.db, fresh);
}

/** The slots of which all was admitted. */
export function admittedSlots(record: MomentRecord): Slot[] {
  return record.admitted('slot').map(slotOf);
}

function slotOf(key: string): Slot {
  const [station, slot] = z.tuple([z.string(), z.string()]).parse(JSON.parse(key));
  return { station, slot };
}
