import { z } from 'zod';
import { findEventsById } from '@/lib/data/log/find-events';
import type { Arriving } from '@/lib/data/log/insert-events';
import { insertRefusals } from '@/lib/data/log/insert-refusals';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import { judgeRecorded } from '@/lib/data/record/judge-recorded';
import type { KeptRecord } from '@/lib/data/record/kept-record';
import { holdKey } from '@/lib/data/record/record-cache';
import { Recorder } from '@/lib/data/record/recorder';
import { noteArrivals } from '@/lib/data/record/refresh-devices';
import { NO_NUMBERS, openUsedNumbers } from '@/lib/data/record/used-numbers';
import type { Writing } from '@/lib/data/transaction';
import { isSameContent, type LoggedEvent, subjectUnit } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import { judge } from '@/lib/domain/gate/judge';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { FUTURE_TOLERANCE_US, formatInstant } from '@/lib/domain/time';

/** What became of one event; `unstorable` is one that PostgreSQL itself cannot hold. */
export type AppendOutcome =
  | { outcome: 'recorded'; flags: Refusal[] }
  | { outcome: 'already_recorded' }
  | { outcome: 'refused'; reasons: Refusal[] }
  | { outcome: 'unstorable' };

/**
 * An event on its way into the log; `refusal` is what was decided about its sender, who may not send it. With
 * `isNumberOnce` its device vouches that it gave the number once.
 */
export type Submitted = Arriving & { refusal: Refusal | null; isNumberOnce?: boolean };

/**
 * Judges and records events one after the other, inside the writer's transaction: each is judged on the record that
 * holds those before it. Events under `gate: record` are judged last, when all that came with them is known.
 */
export async function appendBatch(
  writing: { db: Writing; kept: KeptRecord; recordedAtUs: number },
  submitted: readonly Submitted[],
): Promise<AppendOutcome[]> {
  const batch = await Batch.open(writing, submitted);
  const outcomes: AppendOutcome[] = [];
  for (const each of submitted) {
    outcomes.push(await batch.append(each));
    if (outcomes.length % SENT_AHEAD_EACH === 0) await batch.sendAhead();
  }
  await batch.close();
  return outcomes;
}

/** PostgreSQL writes so many events while the next ones are judged. */
const SENT_AHEAD_EACH = 100;

const NOT_ARRIVED: readonly string[] = ['time_in_future', 'device_seq_reused'];

const beforeRow = z.object({ has_flagged: z.boolean(), voided: z.array(z.string()) });

class Batch {
  /** Reads see what was recorded before them, also what was not sent yet. */
  readonly #db: Writing;
  readonly #kept: KeptRecord;
  readonly #recordedAtUs: number;
  readonly #recorder: Recorder;
  readonly #known = new Map<string, LoggedEvent>();
  readonly #voided = new Set<string>();
  readonly #refused: (Arriving & { reasons: Refusal[] })[] = [];
  #numbers = NO_NUMBERS;
  #toJudge: LoggedEvent[] = [];
  #changes: LoggedEvent[] = [];
  readonly #flagsOf = new Map<string, Refusal[]>();

  constructor(writing: { db: Writing; kept: KeptRecord; recordedAtUs: number }) {
    this.#kept = writing.kept;
    this.#recordedAtUs = writing.recordedAtUs;
    this.#recorder = new Recorder(writing);
    this.#db = {
      ...writing.db,
      query: (text, values) => {
        this.#recorder.flush();
        return writing.db.query(text, values);
      },
    };
  }

  /** Opens a batch, and reads in bulk what most of its events will be judged on. */
  static async open(
    writing: { db: Writing; kept: KeptRecord; recordedAtUs: number },
    submitted: readonly Submitted[],
  ): Promise<Batch> {
    const { kept } = writing;
    const batch = new Batch(writing);
    const db = batch.#db;
    const events = submitted.map(({ event }) => event);
    const once = submitted.filter(({ isNumberOnce }) => isNumberOnce).map(({ event }) => event);
    // What was expected of the turn and of the events is checked by PostgreSQL before anything is written.
    if (!kept.continueIn(db)) await Promise.all([kept.startIn(db), batch.#readBefore(events)]);
    const [numbers] = await Promise.all([openUsedNumbers(db, once), batch.#readAhead(events)]);
    batch.#numbers = numbers;
    return batch;
  }

  /** Which of the events are in the log already, or were voided before they came. */
  async #readBefore(events: readonly LoggedEvent[]): Promise<void> {
    const ids = events.map((event) => event.id);
    const [known, { rows }] = await Promise.all([
      findEventsById(this.#db, ids),
      this.#db.query(
        `select exists (select from read.flagged) as has_flagged,
           array(select v.event::text from read.voided v where v.event = any($1::uuid[])) as voided`,
        [ids],
      ),
    ]);
    for (const event of known) this.#known.set(event.id, event);
    const before = beforeRow.parse(rows[0]);
    this.#kept.hasFlagged = before.has_flagged;
    for (const event of before.voided) this.#voided.add(event);
  }

  async #readAhead(events: readonly LoggedEvent[]): Promise<void> {
    const units = events.flatMap((event) => subjectUnit(event) ?? []);
    const stations = events.flatMap((event) =>
      event.type === 'unit.processed' || changesSlot(event) ? [event.station] : [],
    );
    const items = events.flatMap((event) => touchedBy(event).items);
    const containers = events.flatMap((event) => touchedBy(event).mentioned);
    const { cache } = this.#kept;
    await Promise.all([
      cache.units.require(units),
      cache.joiningsOfInner.require(units),
      cache.joiningsOfOuter.require(units),
      cache.slots.require(stations),
      cache.items.require(items),
      cache.itemHistories.require(items),
      cache.containers.require(containers),
      cache.holds.require([
        ...units.map((unit) => holdKey('unit', unit)),
        ...items.map((item) => holdKey('item', item)),
        ...events.flatMap(lotOf).map((lot) => holdKey('lot', lot)),
        ...containers.map((container) => holdKey('container', container)),
      ]),
    ]);
  }

  /** Hands over what was recorded so far, and lets the connection send it. */
  sendAhead(): Promise<void> {
    this.#recorder.sendEvents();
    return new Promise((resolve) => setImmediate(resolve));
  }

  async append({ refusal, isNumberOnce, ...arriving }: Submitted): Promise<AppendOutcome> {
    const { event } = arriving;
    // A retry is answered before anything is judged, or the retry of a final event is refused by its own effect.
    const known = this.#known.get(event.id);
    if (known !== undefined)
      return isSameContent(known, event)
        ? { outcome: 'already_recorded' }
        : this.#refuse(arriving, [{ code: 'event_id_reused', id: event.id }]);
    if (event.atUs > this.#recordedAtUs + FUTURE_TOLERANCE_US)
      return this.#refuse(arriving, [
        { code: 'time_in_future', at: event.at, now: formatInstant(this.#recordedAtUs) },
      ]);
    if (isNumberOnce && this.#numbers.isTaken(event))
      return this.#refuse(arriving, [
        { code: 'device_seq_reused', device: event.device, deviceSeq: event.deviceSeq },
      ]);
    if (refusal !== null) return this.#refuse(arriving, [refusal]);
    this.#numbers.take(event);
    const isVoided = this.#voided.has(event.id) && event.type !== 'event.voided';
    const flags: Refusal[] = [];
    if (!isVoided && event.gate !== 'record') {
      const reasons = await this.#judge(event);
      if (reasons.length > 0) return this.#refuse(arriving, reasons);
    }
    await this.#recorder.record(arriving, { isVoided });
    this.#known.set(event.id, event);
    if (event.type === 'event.voided') this.#voided.add(event.body.event);
    if (!isVoided) await this.#noteChange(event);
    if (!isVoided && event.gate === 'record') {
      this.#toJudge.push(event);
      this.#flagsOf.set(event.id, flags);
    }
    return { outcome: 'recorded', flags };
  }

  /** Judges what was recorded unjudged and writes what is still in memory. */
  async close(): Promise<void> {
    await this.#settle();
    this.#recorder.flush();
    const { defer } = this.#db;
    defer(insertRefusals(this.#db, this.#refused, this.#recordedAtUs));
    // A refused event has arrived. One from the future has not: the device owes it until its clock is right. Nor has
    // one whose number another event has: it comes again under a number of its own.
    const arrived = this.#refused.filter(({ reasons }) => !NOT_ARRIVED.includes(reasons[0]?.code ?? ''));
    const events = arrived.map(({ event }) => event);
    defer(noteArrivals(this.#db, events, this.#recordedAtUs));
  }

  async #judge(event: LoggedEvent): Promise<Refusal[]> {
    if (this.#toJudge.length > 0) await this.#settle();
    const reasons = await this.#reasonsAgainst(event);
    const mayBeSettled = this.#kept.hasFlagged && this.#changes.length > 0;
    if (!mayBeSettled || !reasons.some(({ code }) => code === 'on_hold')) return reasons;
    // What came before it in this batch may have put right what holds the unit.
    await this.#settle();
    return this.#reasonsAgainst(event);
  }

  async #reasonsAgainst(event: LoggedEvent): Promise<Refusal[]> {
    const db = this.#db;
    const { cache, plant } = this.#kept;
    return judge(event, await assembleKnown({ db, cache, plant, event, mode: 'enforce' }));
  }

  #refuse(arriving: Arriving, reasons: Refusal[]): AppendOutcome {
    this.#refused.push({ ...arriving, reasons });
    return { outcome: 'refused', reasons };
  }

  async #noteChange(event: LoggedEvent): Promise<void> {
    if (event.type !== 'event.voided') {
      this.#changes.push(event);
      return;
    }
    const [target] = await findEventsById(this.#db, [event.body.event]);
    if (target !== undefined) this.#changes.push(target);
  }

  async #settle(): Promise<void> {
    const [toJudge, changes] = [this.#toJudge, this.#changes];
    [this.#toJudge, this.#changes] = [[], []];
    this.#recorder.flush();
    if (toJudge.length === 0 && !this.#kept.hasFlagged) return;
    this.#kept.hasFlagged = true;
    const { cache, plant } = this.#kept;
    const judging = { db: this.#db, cache, plant };
    for (const [id, flags] of await judgeRecorded(judging, toJudge, changes))
      this.#flagsOf.get(id)?.splice(0, Number.POSITIVE_INFINITY, ...flags);
  }
}

function lotOf({ type, body }: LoggedEvent): string[] {
  return type === 'item.received' && body.lot !== undefined ? [body.lot] : [];
}
