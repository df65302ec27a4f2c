import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { RefusalCode } from '@/lib/domain/gate/refusals';
import type { Agenda } from '@/scripts/demo/simulation/agenda';
import type { Calendar } from '@/scripts/demo/simulation/calendar';
import { EventIds } from '@/scripts/demo/simulation/event-id';
import type { Random } from '@/scripts/demo/simulation/random';

type WithoutOrigin<Event> = Event extends WireEvent
  ? Omit<Event, 'id' | 'at' | 'device' | 'deviceSeq'>
  : never;

/** What an event says, before the journal adds its id, its time and its device. */
export type EventDraft = WithoutOrigin<WireEvent>;

/** Everything that was recorded at the plant, in order of time, with the attempts that the gate is to refuse. */
export class Journal {
  readonly events: WireEvent[] = [];
  readonly expectedRefusals = new Map<string, RefusalCode>();
  readonly #agenda: Agenda;
  readonly #calendar: Calendar;
  readonly #ids: EventIds;
  readonly #deviceOf: ReadonlyMap<string, string>;
  readonly #lastSeq = new Map<string, number>();

  /** `devices` names the tablet at a station; stations without one have a machine that does not number its events. */
  constructor(options: {
    agenda: Agenda;
    calendar: Calendar;
    random: Random;
    devices: ReadonlyMap<string, string>;
  }) {
    this.#agenda = options.agenda;
    this.#calendar = options.calendar;
    this.#ids = new EventIds(options.random);
    this.#deviceOf = options.devices;
  }

  /** Writes what happens now; returns the event's id. */
  write(draft: EventDraft): string {
    const id = this.#ids.next(this.#calendar.wallMs(this.#agenda.nowMs));
    const at = this.timeAt(this.#agenda.nowMs);
    this.events.push({ ...draft, id, at, ...this.#numbered(draft.station) });
    return id;
  }

  /** Writes what somebody tries now and the gate must refuse, with the first reason it gives. */
  attempt(draft: EventDraft, refusal: RefusalCode): void {
    this.expectedRefusals.set(this.write(draft), refusal);
  }

  /** Writes the demo's last event under the id that marks its end. */
  writeLast(draft: EventDraft, id: string): void {
    this.events.push({ ...draft, id, at: this.timeAt(this.#agenda.nowMs) });
  }

  /** A simulated time as the wire writes it. */
  timeAt(atMs: number): string {
    return new Date(this.#calendar.wallMs(atMs)).toISOString();
  }

  #numbered(station: string | undefined): { device: string; deviceSeq: number } | Record<never, never> {
    const device = station === undefined ? undefined : this.#deviceOf.get(station);
    if (device === undefined) return {};
    const deviceSeq = (this.#lastSeq.get(device) ?? 0) + 1;
    this.#lastSeq.set(device, deviceSeq);
    return { device, deviceSeq };
  }
}
