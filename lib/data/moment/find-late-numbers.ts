import { z } from 'zod';
import { EVENT_COLUMNS, readEventRow } from '@/lib/data/log/event-row';
import { NOT_ARRIVED } from '@/lib/data/moment/admit-devices';
import type { LateEvent } from '@/lib/data/moment/late-event';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { momentText } from '@/lib/data/moment/moment-tables';
import { type ArrivedNumbers, type NumberRange, withNumber } from '@/lib/domain/devices/arrived-numbers';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';

/** An event that opened or closed a gap of its device, whether it was recorded or refused. */
export type LateNumber = Omit<LateEvent, 'unit' | 'received'> & { received: string };

const deviceSchema = z.object({ device: z.string(), ranges: z.array(z.tuple([z.number(), z.number()])) });
const arrivalSchema = z.object({
  id: z.string(),
  position: z.number().nullable(),
  arrived_at: z.number(),
  arrived_by: z.string(),
  device: z.string(),
  device_seq: z.number(),
});
const contentSchema = z.object({ content: eventSchema });

/**
 * The events that arrived after a moment, up to another one, and changed what devices owe, in order. A number that
 * follows the highest of its device changes nothing. Returns also the numbers of the devices before the first of them
 * and after each. Cost: what arrived in between.
 */
export async function findLateNumbers(
  { live, moment }: MomentRecord,
  devices: readonly string[],
  { to, toUs }: { to: number; toUs: number },
): Promise<{ late: LateNumber[]; states: { device: string; numbers: ArrivedNumbers }[] }> {
  const known = await live.query(
    `select device, (
       select coalesce(json_agg(json_build_array(lower(r), upper(r) - 1) order by lower(r)), '[]')
       from unnest(received) as r
     ) as ranges
     from pg_temp.device where device = any($1)`,
    [devices],
  );
  const numbersOf = new Map<string, ArrivedNumbers>(
    known.rows.map((row) => {
      const { device, ranges } = deviceSchema.parse(row);
      return [device, ranges.map(([from, to]): NumberRange => [from, to])];
    }),
  );
  const states = [...numbersOf].map(([device, numbers]) => ({ device, numbers }));
  const { rows } = await live.query(
    `select id, position, recorded_at as arrived_at, recorded_by as arrived_by, device, device_seq
     from log.event where position > $2 and position <= $3 and device = any($1)
     union all
     select event, null, refused_at, refused_by, device, device_seq
     from log.refusal
     where device = any($1) and code not in ${NOT_ARRIVED}
       and refused_at > $4::timestamptz and refused_at <= $5::timestamptz
     order by arrived_at, position`,
    [devices, moment.knownTo, to, momentText(moment.knownAtUs), momentText(toUs)],
  );
  const changing = rows.flatMap((row) => {
    const { id, device, device_seq, ...arrival } = arrivalSchema.parse(row);
    const { numbers, changesGaps } = withNumber(numbersOf.get(device) ?? [], device_seq);
    numbersOf.set(device, numbers);
    if (!changesGaps) return [];
    states.push({ device, numbers });
    return [{ id, arrival, received: multirange(numbers) }];
  });
  const late: LateNumber[] = [];
  for (const { id, arrival, received } of changing) {
    const { position, arrived_at: recordedAtUs, arrived_by: recordedBy } = arrival;
    const event = await (position === null ? findRefused(live, id) : findRecorded(live, position));
    late.push({ event, position, recordedAtUs, recordedBy, received });
  }
  return { late, states };
}

async function findRecorded(live: MomentRecord['live'], position: number) {
  const { rows } = await live.query(`select ${EVENT_COLUMNS} from log.event e where e.position = $1`, [
    position,
  ]);
  return readEventRow(rows[0]);
}

async function findRefused(live: MomentRecord['live'], id: string) {
  const { rows } = await live.query(
    'select content from log.refusal where event = $1 order by position limit 1',
    [id],
  );
  return toLogged(contentSchema.parse(rows[0]).content);
}

function multirange(numbers: ArrivedNumbers): string {
  return `{${numbers.map(([from, to]) => `[${from},${to}]`).join(',')}}`;
}
