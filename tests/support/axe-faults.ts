import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { expect } from 'vitest';

/** What axe finds wrong with the page once nothing moves on it: a rule's name and the first element that breaks it. */
export async function faultsSeenByAxe(page: Page): Promise<string[]> {
  await untilStill(page);
  const { violations, passes } = await new AxeBuilder({ page })
    // No page has a frame: the answer is made where the page is, not in a second one that must read axe too.
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .analyze();
  expect(passes.length).toBeGreaterThan(10);
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

/** A dialog that is fading has the contrast of neither state. */
async function untilStill(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      new Promise<boolean>((resolve) => {
        const moves = () =>
          document.getAnimations().some(({ playState, effect }) => {
            const end = effect?.getComputedTiming().endTime;
            return playState === 'running' && end !== Number.POSITIVE_INFINITY;
          });
        const movedAtFirst = moves();
        setTimeout(() => resolve(!movedAtFirst && !moves()), 60);
      }),
  );
}
