import type { Page } from 'playwright';
import { type Frames, recordFrames } from '@/scripts/bench/measures/record-frames';

/** Frames of one picture under every gesture, by its name. */
export type GestureFrames = Record<string, Frames>;

const PAUSE_MS = 8;
const STEPS = 240;
const KEYS = 60;
const FOLDS = 6;

/** Does every gesture in turn on the genealogy picture that a page shows, unfolded at first, and times the frames. */
export async function measureGestures(page: Page): Promise<GestureFrames> {
  const frames: GestureFrames = {};
  const frame = page.getByRole('tree').locator('..');
  await button(page, 'Unfold all').click();
  await button(page, 'Fit').click();
  await button(page, 'Zoom in').click();
  await page.waitForTimeout(500);
  frames.still = await recordFrames(page, () => page.waitForTimeout(1000));
  const box = await frame.boundingBox();
  if (box === null) throw new Error('The picture is not on the page.');
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  frames.wheel = await recordFrames(page, () => wheelInAndOut(page));
  await readable(page, middle);
  frames.pan = await recordFrames(page, () => panRound(page, middle));
  await page.getByRole('treeitem').first().focus();
  frames.keys = await recordFrames(page, () => travel(page));
  frames.foldOne = await recordFrames(page, () => foldOne(page));
  frames.foldAll = await recordFrames(page, () => foldAll(page));
  return frames;
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Up and down, left and right, as a hand does that looks for something. */
async function panRound(page: Page, { x, y }: { x: number; y: number }): Promise<void> {
  for (const [byX, byY] of [
    [0, -300],
    [0, 300],
    [300, -200],
    [-300, 200],
  ] as const) {
    await page.mouse.move(x - byX / 2, y - byY / 2);
    await page.mouse.down();
    for (let step = 1; step <= STEPS / 4; step += 1) {
      const share = (4 * step) / STEPS - 0.5;
      await page.mouse.move(x + byX * share, y + byY * share);
      await page.waitForTimeout(PAUSE_MS);
    }
    await page.mouse.up();
  }
}

async function wheelInAndOut(page: Page): Promise<void> {
  await page.keyboard.down('Control');
  for (let step = 0; step < STEPS / 2; step += 1) {
    await page.mouse.wheel(0, step < STEPS / 4 ? -40 : 40);
    await page.waitForTimeout(PAUSE_MS);
  }
  await page.keyboard.up('Control');
}

/** A scale at which words are read, where there is most to draw: the middle of the picture. */
async function readable(page: Page, middle: { x: number; y: number }): Promise<void> {
  await page.mouse.move(middle.x, middle.y);
  for (let clicks = 0; clicks < 12; clicks += 1) {
    const isFar = await page.getByRole('tree').getAttribute('data-far');
    if (isFar === 'false') break;
    await button(page, 'Zoom in').click();
  }
  await page.waitForTimeout(300);
}

/** Out to what hangs outermost, along it, and back. */
async function travel(page: Page): Promise<void> {
  for (const key of ['Home', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft']) await press(page, key);
  for (let index = 0; index < KEYS; index += 1) await press(page, index < KEYS / 2 ? 'ArrowDown' : 'ArrowUp');
}

/** One station's lots, folded and unfolded by the key. */
async function foldOne(page: Page): Promise<void> {
  await press(page, 'ArrowRight');
  for (let index = 0; index < FOLDS; index += 1) await press(page, ' ');
}

async function foldAll(page: Page): Promise<void> {
  for (let index = 0; index < FOLDS; index += 1) {
    await button(page, index % 2 === 0 ? 'Fold all' : 'Unfold all').click();
    await page.waitForTimeout(200);
  }
}

async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await page.waitForTimeout(4 * PAUSE_MS);
}
