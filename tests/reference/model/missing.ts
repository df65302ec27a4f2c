import type { History } from '@/tests/reference/model/history';
import { liveOf } from '@/tests/reference/model/history';

/** What is missing of a device: its gaps, number by number, and its highest number. */
export type Missing = { device: string; missing: number[]; highest: number };

/** Missing events that will never come, because their device was retired by the event with this id. */
export type MissingForGood = Missing & { retiredBy: string };

/** What is owing and what is lost (domain.md, law 4): each device counts its events from 1 without gaps. */
export function missingOf(history: History): { owing: Missing[]; lost: MissingForGood[] } {
  const retiredBy = new Map<string, string>();
  for (const { event, key } of liveOf(history, 'device.retired'))
    if (!retiredBy.has(event.body.device)) retiredBy.set(event.body.device, key.id);
  const numbers = new Map<string, Set<number>>();
  for (const device of retiredBy.keys()) numbers.set(device, new Set());
  for (const { event } of history.all)
    if (event.device !== undefined && event.deviceSeq !== undefined)
      numbers.set(event.device, (numbers.get(event.device) ?? new Set()).add(event.deviceSeq));
  const owing: Missing[] = [];
  const lost: MissingForGood[] = [];
  for (const device of [...numbers.keys()].sort()) {
    const arrived = numbers.get(device) ?? new Set<number>();
    const highest = Math.max(0, ...arrived);
    const missing: number[] = [];
    for (let number = 1; number < highest; number += 1) if (!arrived.has(number)) missing.push(number);
    const by = retiredBy.get(device);
    if (by !== undefined) lost.push({ device, missing, highest, retiredBy: by });
    else if (missing.length > 0) owing.push({ device, missing, highest });
  }
  return { owing, lost };
}
