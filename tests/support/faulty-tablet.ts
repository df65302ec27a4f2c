import { execFileSync } from 'node:child_process';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { browserOptions } from '@/tests/support/browser';
import { replicaHas } from '@/tests/support/replica-has';
import { chooseStation, scan, scanAgain, signInWithPin } from '@/tests/support/shift-scene';

const ATTEMPTS_MAX = 5;
const VERDICT_LIMIT_MS = 8000;
const DELIVERY_LIMIT_MS = 90_000;

/**
 * A device in a browser of its own whose profile outlives it: it passes unit after unit at a station, over whatever
 * network there is, and knows what its page has shown as given.
 */
export class FaultyTablet {
  /** Units whose pass the page has shown, in order. */
  readonly shown: string[] = [];
  /** Units at whose pass the browser was killed before the page could show it. */
  readonly doubtful: string[] = [];
  readonly #options: { origin: string; profile: string; badge: string; station: string };
  #context: BrowserContext | null = null;
  #page: Page | null = null;

  constructor(options: { origin: string; profile: string; badge: string; station: string }) {
    this.#options = options;
  }

  /** Opens the profile, signs in where that is asked for, and waits until the station is ready. */
  async open(): Promise<void> {
    const { origin, profile, badge, station } = this.#options;
    const options = { ...(await browserOptions()), viewport: { width: 1024, height: 768 } };
    this.#context = await chromium.launchPersistentContext(profile, options);
    const page = this.#context.pages()[0] ?? (await this.#context.newPage());
    this.#page = page;
    await page.goto(`${origin}/station`);
    const door = page.getByRole('form', { name: 'At a station' });
    const choice = page.getByRole('button', { name: new RegExp(`^${station}`) });
    const ready = page.getByText('Ready for the next unit.');
    await door.or(choice).or(ready).first().waitFor();
    if (await door.isVisible()) await signInWithPin(page, badge);
    await choice.or(ready).first().waitFor();
    if (await choice.isVisible()) await chooseStation(page, station);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  }

  /** Waits until the tablet could judge this unit by itself. */
  async knows(unit: string): Promise<void> {
    await replicaHas(this.#open(), unit);
  }

  /** Scans a unit and passes it, until the page says that the pass is given. */
  async pass(unit: string): Promise<void> {
    const page = this.#open();
    await this.#work(unit);
    await page.keyboard.press('F8');
    await page
      .locator('[data-given]:not([data-given="refused"])')
      .filter({ hasText: unit })
      .first()
      .waitFor();
    this.shown.push(unit);
  }

  /** Passes a unit, and kills the browser before its page can show it; then opens the profile again. */
  async passAndDie(unit: string): Promise<void> {
    const page = this.#open();
    await this.#work(unit);
    this.doubtful.push(unit);
    const closed = new Promise((resolve) => this.#context?.once('close', resolve));
    await page.keyboard.press('F8');
    killBrowser(this.#options.profile);
    await closed;
    await this.open();
  }

  /** Waits until nothing is left on the device. */
  async delivered(): Promise<void> {
    const page = this.#open();
    try {
      await page.getByText('nothing waits here').waitFor({ timeout: DELIVERY_LIMIT_MS });
    } catch {
      throw new Error(`Not delivered: ${await page.locator('#content').textContent()}`);
    }
  }

  async close(): Promise<void> {
    await this.#context?.close().catch(() => undefined);
  }

  async #work(unit: string): Promise<void> {
    const page = this.#open();
    const go = page
      .getByRole('status')
      .filter({ hasText: /GO|CHECK/ })
      .filter({ hasText: unit })
      .first();
    for (let attempt = 1; ; attempt += 1) {
      await (attempt === 1 ? scan(page, unit) : scanAgain(page, unit));
      const isGo = await go.waitFor({ timeout: VERDICT_LIMIT_MS }).then(
        () => true,
        () => false,
      );
      if (isGo) return;
      if (attempt === ATTEMPTS_MAX)
        throw new Error(`No go for ${unit}: ${await page.getByRole('main').textContent()}`);
    }
  }

  #open(): Page {
    if (this.#page === null) throw new Error('The tablet is not open.');
    return this.#page;
  }
}

/** SIGKILL to every process of the browser with this profile. */
function killBrowser(profile: string): void {
  const lines = execFileSync('ps', ['-axo', 'pid=,command='], { encoding: 'utf8' }).split('\n');
  for (const line of lines) {
    const [, pid, command] = /^\s*(\d+)\s+(.*)$/.exec(line) ?? [];
    if (pid === undefined || !command?.includes(`--user-data-dir=${profile}`)) continue;
    try {
      process.kill(Number(pid), 'SIGKILL');
    } catch {
      // It went with another one.
    }
  }
}
