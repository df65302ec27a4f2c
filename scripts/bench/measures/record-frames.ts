import type { CDPSession, Page } from 'playwright';
import { z } from 'zod';

/**
 * What a page told of its frames while something was done: time between frames, and tasks over 50 ms. `busyMs` is the
 * processor's time of the page's main thread: other programs on the machine do not lengthen it.
 */
export type Frames = { intervalsMs: number[]; longTasksMs: number[]; busyMs: number };

const framesSchema = z.object({ intervalsMs: z.array(z.number()), longTasksMs: z.array(z.number()) });

/** Does something in a page and tells how its frames came; a moment at the end belongs to it, for what it set off. */
export async function recordFrames(page: Page, act: () => Promise<void>): Promise<Frames> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.evaluate(BEGIN);
  const busyBefore = await busyMsOf(session);
  await act();
  await page.waitForTimeout(SETTLE_MS);
  const frames = framesSchema.parse(await page.evaluate('window.endFrames()'));
  const busyMs = (await busyMsOf(session)) - busyBefore;
  await session.detach();
  return { ...frames, busyMs };
}

async function busyMsOf(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
}

const SETTLE_MS = 150;

/** Runs in the page: a text, since a transpiled function would want what only this process has. */
const BEGIN = `(() => {
  const intervalsMs = [];
  const longTasksMs = [];
  const observer = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longTasksMs.push(duration);
  });
  observer.observe({ type: 'longtask' });
  let isOver = false;
  let last = null;
  const onFrame = (now) => {
    if (isOver) return;
    if (last !== null) intervalsMs.push(now - last);
    last = now;
    requestAnimationFrame(onFrame);
  };
  requestAnimationFrame(onFrame);
  window.endFrames = () => {
    isOver = true;
    for (const { duration } of observer.takeRecords()) longTasksMs.push(duration);
    observer.disconnect();
    return { intervalsMs, longTasksMs };
  };
})()`;
