import { codeFault } from '@/lib/domain/codes';
import { checkAnswerSchema } from '@/lib/domain/gate/question';
import { thrownErrors } from '@/lib/domain/input-errors';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { type ProductPicture, productPictureSchema } from '@/lib/domain/station/product-picture';
import { judgedScanSchema, type ScanPicture, scanPictureSchema } from '@/lib/domain/station/scan-picture';
import { advanceSession } from '@/lib/domain/station/session/advance-session';
import { NEW_SESSION, type Session } from '@/lib/domain/station/session/session';
import type { SessionEffect, SessionInput } from '@/lib/domain/station/session/session-input';
import { type StationPicture, stationPictureSchema } from '@/lib/domain/station/station-picture';
import { contactNow, watchContact } from '@/lib/offline/contact';
import type { FactRecorder } from '@/lib/offline/fact-recorder';
import { ANSWER_LIMIT_MS, inTime, within } from '@/lib/offline/in-time';
import { localInstant } from '@/lib/offline/local-instant';
import { pageClock } from '@/lib/offline/page-clock';
import { type ApiAnswer, apiPath, readApi } from '@/lib/offline/read-api';
import type { LocalAnswer, StationReplica } from '@/lib/offline/replica/station-replica';
import { giveSignal } from '@/lib/ui/shop/signals';
import { keepSession, keptLots, keptSession } from '@/lib/ui/station/kept-session';

/** What a station's screen shows. */
export type StationView = {
  picture: StationPicture | null;
  /** Why there is no picture; null while it is asked for. */
  trouble: 'unreachable' | 'signed_out' | 'not_permitted' | 'not_found' | null;
  session: Session;
  /** The last scan when it was no code at all. */
  badScan: string | null;
};

/** What is shown before there is a station. */
export const NO_STATION: StationView = {
  picture: null,
  trouble: null,
  session: NEW_SESSION,
  badScan: null,
};

const KEEP_AFTER_MS = 1000;
/** A verdict that comes sooner is shown without the question before it: one picture less to draw. */
const QUESTION_SHOWN_AFTER_MS = 300;

type Answer = Pick<Extract<SessionInput, { kind: 'answered' }>, 'answer' | 'scan' | 'product'>;
type Options = { station: string; person: PersonPrincipal; recorder: FactRecorder };

/**
 * Runs a station's session: gives it scans, presses and answers, and does what it asks for. One for a station, a
 * person and a page; `start` and `stop` may be called in turns.
 */
export class StationController {
  readonly #options: Options;
  readonly #listeners = new Set<() => void>();
  readonly #products = new Map<string, ProductPicture>();
  /** Answers that are awaited, by unit: a unit is asked about only when what was said of it is known. */
  readonly #awaited = new Map<string, Promise<unknown>>();
  #early: SessionInput[] = [];
  #stopFollowing: () => void = () => undefined;
  #replica: Promise<StationReplica> | null = null;
  #view = NO_STATION;
  #telling: ReturnType<typeof setTimeout> | undefined;

  constructor(options: Options) {
    this.#options = options;
    const lots = keptLots(options.station);
    if (lots !== null) this.#view = { ...this.#view, session: { ...NEW_SESSION, ...lots } };
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly view = (): StationView => this.#view;

  /** Reads the station, takes up what a reload left, and follows refusals. */
  async start(): Promise<void> {
    const { station, recorder } = this.#options;
    const kept = keptSession(station);
    await this.reload();
    if (kept !== null) {
      const isDone = kept.resumed !== null && (await recorder.lastStartedAt()) === kept.resumed.startedAt;
      const { unit, resumed, waiting } = isDone ? { ...kept, unit: null, resumed: null } : kept;
      this.dispatch({ kind: 'resumed', unit, resumed, waiting });
    }
    const stops = [
      recorder.subscribe(() => this.#noteRefusals()),
      watchContact(() => {
        if (contactNow().isOnline) recorder.wake();
      }),
      this.#keepReplica(),
    ];
    this.#stopFollowing = () => {
      for (const stop of stops) stop();
    };
    this.#noteRefusals();
  }

  stop(): void {
    this.#stopFollowing();
  }

  /** Reads the station again: slots, history, and what is usual here. */
  async reload(): Promise<void> {
    const path = apiPath('/api/station', { code: this.#options.station });
    const answer = await readApi(path, stationPictureSchema);
    if (answer.ok) this.#show({ ...this.#view, picture: answer.data, trouble: null });
    else if (answer.why === 'unreachable') await this.#showKeptPicture();
    else if (this.#view.picture === null || answer.why === 'signed_out')
      this.#show({ ...this.#view, trouble: answer.why === 'malformed' ? 'not_found' : answer.why });
    if (this.#view.picture !== null) for (const input of this.#early.splice(0)) this.dispatch(input);
  }

  /** A code from the scan box. */
  scan(code: string): void {
    const isBad = codeFault(code) !== null;
    const badScan = isBad ? code : null;
    if (badScan !== this.#view.badScan) this.#show({ ...this.#view, badScan });
    if (isBad) giveSignal('stop');
    else this.dispatch({ kind: 'scanned', code });
  }

  dispatch(input: SessionInput): void {
    const { picture, session } = this.#view;
    if (picture === null) {
      this.#early.push(input);
      return;
    }
    const { person, station } = this.#options;
    const step = advanceSession(session, input, {
      picture,
      may: (action) => may(person, action),
      now: localInstant(new Date(pageClock.stamp().atMs)),
    });
    this.#show({ ...this.#view, session: step.session });
    keepSession(station, step.session);
    const isLate = isProvisional(session);
    for (const effect of step.effects) this.#run(effect, isLate);
  }

  #run(effect: SessionEffect, isLate: boolean): void {
    switch (effect.kind) {
      case 'ask':
        void this.#ask(effect.unit);
        return;
      case 'ask_aside':
        void this.#askAside(effect.unit);
        return;
      case 'identify':
        void this.#describe(effect.code).then((scan) =>
          this.dispatch({ kind: 'identified', code: effect.code, scan }),
        );
        return;
      case 'record':
        void this.#record(effect, isLate || effect.isFact === true);
        return;
      case 'signal':
        giveSignal(effect.signal);
        return;
      case 'tick':
        setTimeout(() => this.dispatch({ kind: 'ticked' }), effect.afterMs);
        return;
      case 'forget':
        void this.#options.recorder.forget(effect.id);
        return;
      default:
        effect satisfies never;
    }
  }

  async #ask(unit: string): Promise<void> {
    const isAwaited = contactNow().isOnline && this.#awaited.get(unit);
    if (isAwaited) await within(ANSWER_LIMIT_MS, isAwaited);
    const asked = await inTime(() => this.#askServer(unit));
    if (asked?.ok) {
      this.dispatch({ kind: 'answered', unit, ...asked.data });
      return;
    }
    if (asked?.why === 'signed_out' || asked?.why === 'not_permitted') {
      this.dispatch({ kind: 'unanswered', unit, why: asked.why });
      return;
    }
    const own = await this.#askReplica(unit);
    const answered = own === null && asked === null ? await this.#askServer(unit) : null;
    if (own !== null) this.dispatch({ kind: 'answered', unit, ...own });
    else if (answered?.ok) this.dispatch({ kind: 'answered', unit, ...answered.data });
    else this.dispatch({ kind: 'unanswered', unit, why: 'unreachable' });
  }

  /** What the gate says and what is known of the unit, by one request: each takes its time on a slow tablet. */
  async #askServer(unit: string): Promise<ApiAnswer<Answer>> {
    const { station, person } = this.#options;
    const path = apiPath('/api/scan', { code: unit, station, operator: person.badge });
    const asked = await readApi(path, judgedScanSchema);
    if (!asked.ok) return asked;
    const { verdict, ...scan } = asked.data;
    return { ok: true, data: { answer: verdict, scan, product: await this.#productOf(scan) } };
  }

  /** What this tablet says by itself; null when it keeps nothing for this station. */
  async #askReplica(unit: string): Promise<LocalAnswer | null> {
    const { person, recorder } = this.#options;
    try {
      const replica = await this.#local();
      const own = recorder.view().entries.flatMap(({ reasons, event }) => (reasons === null ? event : []));
      return await replica.ask({ unit, operator: person.badge, at: localInstant(new Date()), own });
    } catch {
      return null;
    }
  }

  /** The page comes first: what it can do without the server is fetched when it stands there. */
  #keepReplica(): () => void {
    let stop: (() => void) | null = () => undefined;
    const timer = setTimeout(() => {
      void import('@/lib/offline/replica/keep-replica')
        .then(({ keepReplica }) => {
          if (stop !== null) stop = keepReplica(this.#options.station, () => void this.#warm());
        })
        .catch(() => undefined);
    }, KEEP_AFTER_MS);
    return () => {
      clearTimeout(timer);
      stop?.();
      stop = null;
    };
  }

  /** What judges without the server must be here before the server goes. */
  async #warm(): Promise<void> {
    await (await this.#local()).warm().catch(() => undefined);
  }

  /** What judges without the server comes when it is first needed, so that a station's first load stays small. */
  #local(): Promise<StationReplica> {
    this.#replica ??= import('@/lib/offline/replica/station-replica').then(
      (module) => new module.StationReplica(this.#options.station),
    );
    return this.#replica;
  }

  async #showKeptPicture(): Promise<void> {
    if (this.#view.picture !== null) return;
    const picture = await this.#local()
      .then((replica) => replica.picture(this.#options.person.badge))
      .catch(() => null);
    this.#show({ ...this.#view, picture, trouble: picture === null ? 'unreachable' : null });
  }

  async #askAside(unit: string): Promise<void> {
    const { station, person } = this.#options;
    const question = { unit, station, operator: person.badge };
    const check = await inTime(() => readApi('/api/check', checkAnswerSchema, question));
    const answer = check?.ok ? check.data : ((await this.#askReplica(unit))?.answer ?? null);
    this.dispatch({ kind: 'answered_aside', unit, answer });
  }

  async #describe(code: string): Promise<ScanPicture | null> {
    const found = await inTime(() => this.#readScan(code));
    return (found?.ok ? found.data : null) ?? (await this.#askReplica(code))?.scan ?? null;
  }

  #readScan(code: string): Promise<ApiAnswer<ScanPicture>> {
    return readApi(apiPath('/api/scan', { code, station: this.#options.station }), scanPictureSchema);
  }

  async #productOf(scan: ScanPicture | null): Promise<ProductPicture | null> {
    const { product = null, revision = null } = scan?.unit ?? {};
    if (product === null || revision === null) return null;
    const key = JSON.stringify([product, revision]);
    const known = this.#products.get(key);
    if (known !== undefined) return known;
    const answer = await readApi(apiPath('/api/product', { product, revision }), productPictureSchema);
    if (answer.ok) this.#products.set(key, answer.data);
    return answer.ok ? answer.data : null;
  }

  async #record(
    { tag, draft }: Extract<SessionEffect, { kind: 'record' }>,
    isForRecord: boolean,
  ): Promise<void> {
    const unit = 'unit' in draft.body ? draft.body.unit : '';
    const recording = this.#options.recorder.record(draft, isForRecord ? { isLate: true } : {});
    const answered = recording.then((kept) => kept.answered);
    const awaited = answered.catch(() => undefined);
    this.#awaited.set(unit, awaited);
    try {
      const { isLate } = await recording;
      // The device's own log is as good as the server's until the server is back.
      if (isLate) this.dispatch({ kind: 'settled', tag, isRecorded: true, how: 'kept' });
      const reasons = await answered;
      const isRecorded = reasons === null;
      this.dispatch({ kind: 'settled', tag, isRecorded, ...(isLate && { how: 'after_kept' }) });
    } catch (error) {
      // The event never became one: a code that was typed is no code.
      const reasons = [{ code: 'malformed' as const, errors: thrownErrors(error) }];
      this.dispatch({ kind: 'refused', problem: { id: `local-${tag}`, unit, type: draft.type, reasons } });
      this.dispatch({ kind: 'settled', tag, isRecorded: false });
    }
    if (this.#awaited.get(unit) === awaited) this.#awaited.delete(unit);
    void this.reload();
  }

  #noteRefusals(): void {
    for (const { id, event, reasons } of this.#options.recorder.view().entries) {
      if (reasons === null || this.#view.session.problems.some((problem) => problem.id === id)) continue;
      const unit = 'unit' in event.body ? event.body.unit : '';
      this.dispatch({ kind: 'refused', problem: { id, unit, type: event.type, reasons } });
    }
  }

  #show(view: StationView): void {
    this.#view = view;
    if (view.session.task.step === 'asking') {
      this.#telling ??= setTimeout(() => this.#tell(), QUESTION_SHOWN_AFTER_MS);
      return;
    }
    this.#tell();
  }

  #tell(): void {
    clearTimeout(this.#telling);
    this.#telling = undefined;
    for (const listener of this.#listeners) listener();
  }
}

/** Whether the unit in work has its go from this tablet alone. */
function isProvisional({ task }: Session): boolean {
  const about = 'work' in task ? task.work.about : 'repair' in task ? task.repair.about : null;
  return about?.provisional !== undefined;
}
