import type { eventSchema } from '@/lib/domain/events/catalogue';

/** The schema of every event type: large, and needed only when a fact is told, so a page's first load goes without it. */
export async function fetchEventSchema(): Promise<typeof eventSchema> {
  return (await import('@/lib/domain/events/catalogue')).eventSchema;
}
