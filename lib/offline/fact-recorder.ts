import type { Refusal } from '@/lib/domain/gate/refusals';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import { contactNow } from '@/lib/offline/contact';
import type { DeviceEntry, DeviceLog, NewFact } from '@/lib/offline/device-log';
import { EventSender, type SenderState } from '@/lib/offline/event-sender';
import { openKeptDeviceLog } from '@/lib/offline/kept-device-log';
import { localInstant } from '@/lib/offline/local-instant';
import { memoryDeviceLog } from '@/lib/offline/memory-device-log';
import { pageClock } from '@/lib/offline/page-clock';
import { postEvents } from '@/lib/offline/post-events';

const LOCK_NAME = 'reelkin-sender';
const CHANNEL_NAME = 'reelkin-device-log';

/** What the screens see of the device's log. */
export type RecorderView = { entries: DeviceEntry[]; state: SenderState };

/** How a fact is kept: `isLate` when no server could judge it at its moment. */
type Keeping = { isLate?: boolean };

/** An event that is kept on this device, and its answer when the server gives one: null reasons for recorded. */
export type KeptFact = { id: string; answered: Promise<Refusal[] | null>; isLate: boolean };

type Message =
  | { kind: 'changed' }
  | { kind: 'settled'; id: string; reasons: Refusal[] | null }
  | { kind: 'retold'; id: string; newId: string };

/**
 * Keeps what happened on this device and sends it to the server, whatever happens to network, server and page. One for
 * a page; all tabs of a browser share one log.
 */
export class FactRecorder {
  readonly #badge: string;
  readonly #listeners = new Set<() => void>();
  readonly #own = new Set<string>();
  readonly #answers = new Map<string, (reasons: Refusal[] | null) => void>();
  #opened: Promise<DeviceLog> | null = null;
  #channel: BroadcastChannel | null = null;
  #sender: EventSender | null = null;
  #wakeUp: () => void = () => undefined;
  #stopClock: () => void = () => undefined;
  #view: RecorderView = { entries: [], state: 'idle' };

  /** `badge` is who is signed in. Nothing happens before `start`, or the first record. */
  constructor(badge: string) {
    this.#badge = badge;
  }

  /** Sends what waits from before, and listens to other tabs and to the network. */
  async start(): Promise<void> {
    this.#channel = new BroadcastChannel(CHANNEL_NAME);
    this.#channel.onmessage = ({ data }: MessageEvent<Message>) => {
      if (data.kind === 'settled') this.#answer(data.id, data.reasons);
      if (data.kind === 'retold') this.#retell(data.id, data.newId);
      void this.#refresh();
    };
    window.addEventListener('online', this.wake);
    this.#stopClock = pageClock.start();
    // Asked for, not waited for: a browser that says no keeps the log as long as there is room.
    void navigator.storage?.persist?.().catch(() => undefined);
    await this.#refresh();
    await this.#send();
  }

  /** Keeps a fact of now; resolves as soon as it cannot be lost any more. */
  async record(draft: EventDraft, { isLate = !contactNow().isOnline }: Keeping = {}): Promise<KeptFact> {
    const log = await this.#log();
    const event = await log.append({ draft, badge: this.#badge, isLate, ...timeOf(draft) });
    this.#own.add(event.id);
    const answered = new Promise<Refusal[] | null>((resolve) => this.#answers.set(event.id, resolve));
    await this.#changed();
    void this.#send();
    return { id: event.id, answered, isLate };
  }

  /** Somebody has read why an event was refused. */
  async forget(id: string): Promise<void> {
    await (await this.#log()).forget(id);
    await this.#changed();
  }

  /** Whether this page has sent an event and shows its answer, or has just shown it. */
  isAwaited(id: string): boolean {
    return this.#own.has(id);
  }

  /** Sends now what waits, instead of after the pause. */
  readonly wake = (): void => {
    this.#wakeUp();
    void this.#send();
  };

  /** The go whose result this device made last, or null. */
  async lastStartedAt(): Promise<string | null> {
    return (await (await this.#log()).state()).lastStartedAt;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly view = (): RecorderView => this.#view;

  stop(): void {
    window.removeEventListener('online', this.wake);
    this.#stopClock();
    this.#channel?.close();
    this.#channel = null;
  }

  #log(): Promise<DeviceLog> {
    this.#opened ??= openKeptDeviceLog().catch(memoryDeviceLog);
    return this.#opened;
  }

  async #send(): Promise<void> {
    this.#sender ??= this.#newSender(await this.#log());
    await this.#sender.run();
  }

  #newSender(log: DeviceLog): EventSender {
    return new EventSender({
      log,
      post: async (events, badges) => postEvents(events, await passesOf(badges)),
      isOwn: (id) => this.#own.has(id),
      alone,
      random: Math.random,
      pause: (ms) =>
        new Promise((resolve) => {
          const timer = setTimeout(resolve, ms);
          this.#wakeUp = () => {
            clearTimeout(timer);
            resolve();
          };
        }),
      onState: (state) => this.#show({ ...this.#view, state }),
      onSettled: (id, reasons) => {
        this.#answer(id, reasons);
        this.#tell({ kind: 'settled', id, reasons });
        void this.#refresh();
      },
      onRetold: (id, newId) => {
        this.#retell(id, newId);
        this.#tell({ kind: 'retold', id, newId });
      },
    });
  }

  /** Whoever waits for an answer about a fact goes on waiting. */
  #retell(id: string, newId: string): void {
    const answer = this.#answers.get(id);
    if (answer === undefined) return;
    this.#answers.delete(id);
    this.#answers.set(newId, answer);
    this.#own.add(newId);
  }

  #answer(id: string, reasons: Refusal[] | null): void {
    this.#answers.get(id)?.(reasons);
    this.#answers.delete(id);
  }

  async #changed(): Promise<void> {
    this.#tell({ kind: 'changed' });
    await this.#refresh();
  }

  #tell(message: Message): void {
    this.#channel?.postMessage(message);
  }

  async #refresh(): Promise<void> {
    const log = await this.#log();
    this.#show({ ...this.#view, entries: await log.entries() });
  }

  #show(view: RecorderView): void {
    this.#view = view;
    for (const listener of this.#listeners) listener();
  }
}

/** Now, as sure as the device can be of it and of the begin that the fact may tell. */
function timeOf({ body }: EventDraft): Pick<NewFact, 'at' | 'uncertaintyMs'> {
  const begin = 'startedAt' in body ? body.startedAt : undefined;
  const { atMs, uncertaintyMs } = pageClock.stamp(begin === undefined ? undefined : Date.parse(begin));
  return { at: localInstant(new Date(atMs)), uncertaintyMs };
}

/** The passes of those who did what is sent; without them the server flags what another session delivers. */
async function passesOf(badges: readonly string[]): Promise<string[]> {
  try {
    return await (await import('@/lib/offline/kept-people')).passesOf(badges);
  } catch {
    return [];
  }
}

/** One sender in all tabs. A page without Web Locks (plain http) sends beside the others: ids make that harmless. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (!('locks' in navigator)) return work();
  await navigator.locks.request(LOCK_NAME, work);
}
