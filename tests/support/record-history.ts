import type { Principal } from '@/lib/domain/people/principal';
import { appendEvents, type EventResult } from '@/lib/server/append-events';

const TOKEN: Principal = { kind: 'token' };

/** Sends events in batches through the use case that the route runs, as the API token. */
export async function recordHistory(events: readonly unknown[], batchSize = 100): Promise<EventResult[]> {
  const results: EventResult[] = [];
  for (let start = 0; start < events.length; start += batchSize)
    results.push(...(await appendEvents(events.slice(start, start + batchSize), TOKEN)));
  return results;
}
