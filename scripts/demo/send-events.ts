import type { WireEvent } from '@/lib/domain/events/catalogue';
import { appendEvents, type EventResult } from '@/lib/server/append-events';
import type { DemoPlan } from '@/scripts/demo/plan-demo';

const BATCH_SIZE = 1000;
const REPORT_MS = 2000;

/** Sends a plan through the gate in order of time, as a tablet would; anything that goes otherwise than planned stops it. */
export async function sendEvents(plan: DemoPlan, report: (line: string) => void): Promise<void> {
  const { events } = plan;
  let reportedMs = Date.now();
  for (let start = 0; start < events.length; start += BATCH_SIZE) {
    const batch = events.slice(start, start + BATCH_SIZE);
    const results = await appendEvents(batch, { kind: 'token' });
    batch.forEach((event, index) => {
      checkResult(plan, event, results[index]);
    });
    if (Date.now() - reportedMs < REPORT_MS) continue;
    reportedMs = Date.now();
    report(`Loading the demo: ${Math.floor((100 * (start + batch.length)) / events.length)} %`);
  }
}

function checkResult(
  { expectedRefusals }: DemoPlan,
  event: WireEvent,
  result: EventResult | undefined,
): void {
  const expected = expectedRefusals.get(event.id);
  const refusal = result?.outcome === 'refused' ? result.refusal?.code : undefined;
  if (result !== undefined && refusal === expected) return;
  throw new Error(
    `The demo cannot be loaded: ${event.type} of ${event.at} should be ${expected ?? 'recorded'}, but the gate says ` +
      `${JSON.stringify(result)} about ${JSON.stringify(event)}`,
  );
}
