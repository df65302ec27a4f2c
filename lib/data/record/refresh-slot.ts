import type { Queryable } from '@/lib/data/pool';
import type { EventOf } from '@/lib/domain/events/catalogue';
import { doubtUs, type LoggedEvent } from '@/lib/domain/events/logged-event';
import { formatInstant } from '@/lib/domain/time';

/**
 * The end of each chosen mount is the first later mount in its slot or unmount of its item from it, whichever comes
 * first in order. Each look-up is one index probe.
 */
function endMounts(chosen: string): string {
  return `
    update read.mount m
    set to_at = coalesce(n.at, 'infinity'), to_event = n.event,
        to_low = coalesce(n.at - n.doubt, 'infinity'), to_high = coalesce(n.at + n.doubt, 'infinity')
    from (${chosen}) c
    left join lateral (
      select x.at, x.event, x.doubt
      from (
        (select a.from_at as at, a.event, a.from_high - a.from_at as doubt
         from read.mount a
         where a.station = c.station and a.slot = c.slot and (a.from_at, a.event) > (c.from_at, c.event)
         order by a.from_at, a.event limit 1)
        union all
        (select u.at, u.event, u.doubt
         from read.unmount u
         where u.station = c.station and u.slot = c.slot and u.item = c.item and (u.at, u.event) > (c.from_at, c.event)
         order by u.at, u.event limit 1)
      ) x
      order by x.at, x.event limit 1
    ) n on true
    where m.event = c.event`;
}

/**
 * Sets the intervals that a mount, a splice or an unmount (recorded or voided just now) can change: its own and the one before
 * it in the slot. Constant work, whatever the number of units that it moves.
 */
export async function refreshSlot(
  db: Queryable,
  event: LoggedEvent & EventOf<'item.mounted' | 'item.unmounted' | 'item.spliced'>,
): Promise<void> {
  const { station, body, atUs, id } = event;
  await db.query(
    endMounts(`
      select event, station, slot, item, from_at from read.mount
      where station = $1 and slot = $2 and (from_at, event) <= ($3::timestamptz, $4::uuid)
      order by from_at desc, event desc limit 2`),
    [station, body.slot, formatInstant(atUs), id],
  );
  await noteSlotDoubt(db, { station, slot: body.slot, us: doubtUs(event) });
}

/** Sets the intervals of all mounts, which were loaded without their ends. */
export async function refreshAllSlots(db: Queryable): Promise<void> {
  await db.query(endMounts('select event, station, slot, item, from_at from read.mount'));
}

/** The same for the mounts of some slots. */
export async function refreshSlots(
  db: Queryable,
  slots: readonly { station: string; slot: string }[],
): Promise<void> {
  await db.query(
    endMounts(`
      select m.event, m.station, m.slot, m.item, m.from_at
      from unnest($1::text[], $2::text[]) as s(station, slot)
      join read.mount m on m.station = s.station collate "C" and m.slot = s.slot collate "C"`),
    [slots.map(({ station }) => station), slots.map(({ slot }) => slot)],
  );
}

/** Notes how doubtful a change at a slot was; the largest doubt stays, whatever becomes of the event. */
export async function noteSlotDoubt(
  db: Queryable,
  { station, slot, us }: { station: string; slot: string; us: number },
): Promise<void> {
  await db.query(
    `insert into read.slot_doubt (station, slot, doubt) values ($1, $2, $3::interval)
     on conflict (station, slot) do update set doubt = greatest(slot_doubt.doubt, excluded.doubt)
     where slot_doubt.doubt < excluded.doubt`,
    [station, slot, `${us} microseconds`],
  );
}
