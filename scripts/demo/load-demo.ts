import { findEventsById } from '@/lib/data/log/find-events';
import { findFirstEvent } from '@/lib/data/log/find-first-event';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { createDemoAccounts } from '@/scripts/demo/create-demo-accounts';
import { peopleTable } from '@/scripts/demo/people-table';
import { planDemo } from '@/scripts/demo/plan-demo';
import { DEMO_SITE } from '@/scripts/demo/plant/demo-plant';
import { sendEvents } from '@/scripts/demo/send-events';
import { demoCalendar, endOfDemoBegunAt, endOfDemoLoadedAt } from '@/scripts/demo/simulation/calendar';
import { lastEventId } from '@/scripts/demo/simulation/event-id';

/** Who the log says brought the demo's plant. */
const RECORDED_BY = 'demo';

/**
 * Loads the demo's plant, people and three weeks of production, unless they are loaded; goes on where an earlier
 * load was cut off. Throws when the database holds another plant's events, or the gate refuses what it should not.
 */
export async function loadDemo(options: { report: (line: string) => void }): Promise<void> {
  const { report } = options;
  const begun = await begunDemo();
  if (begun === null || !begun.isComplete) {
    const plan = planDemo(begun?.endsAt ?? endOfDemoLoadedAt(Date.now()));
    report(`Loading the demo: ${plan.events.length} events of three weeks to ${plan.endsAt}`);
    const put = await putPlant(plan.plant, RECORDED_BY);
    if (!put.ok) throw new Error(`The demo's plant file is not valid: ${JSON.stringify(put.errors)}`);
    await createDemoAccounts(RECORDED_BY);
    await sendEvents(plan, report);
  }
  report('This is a demo: invented plant, invented people. Sign in as');
  for (const line of peopleTable()) report(line);
}

/** Which demo the database holds already, and whether to its end; null when the log is empty. */
async function begunDemo(): Promise<{ endsAt: string; isComplete: boolean } | null> {
  const { pool } = database();
  const first = await findFirstEvent(pool);
  if (first === null) return null;
  const { plant } = await loadPlant(pool);
  if (plant.file.site?.code !== DEMO_SITE)
    throw new Error('The database holds events of another plant: the demo is not loaded into it.');
  const endsAt = endOfDemoBegunAt(first.at);
  const found = await findEventsById(pool, [lastEventId(demoCalendar(endsAt).endMs)]);
  return { endsAt, isComplete: found.length > 0 };
}
