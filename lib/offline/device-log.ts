import { z } from 'zod';
import type { eventSchema, WireEvent } from '@/lib/domain/events/catalogue';
import { refusalSchema } from '@/lib/domain/gate/question';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { EventDraft } from '@/lib/domain/station/event-draft';

/**
 * An event of this device that is not done with: the server has not answered (`reasons` null), or it refused it and
 * nobody has read why.
 */
export const deviceEntrySchema = z.object({
  id: z.string(),
  deviceSeq: z.int().min(1),
  /** Who was signed in when it happened; anyone's session may deliver it. */
  badge: z.string(),
  // This device made it by the schema, and the server reads it by the schema.
  event: z.custom<WireEvent>(
    (value) => z.looseObject({ id: z.string(), type: z.string() }).safeParse(value).success,
  ),
  reasons: z.array(refusalSchema).nullable(),
});
export type DeviceEntry = z.infer<typeof deviceEntrySchema>;

/** What a device is and has come to: its name, the number of its next event, the go whose result it made last. */
export const deviceStateSchema = z.object({
  device: z.string(),
  nextSeq: z.int().min(1),
  lastStartedAt: z.string().nullable(),
});
export type DeviceState = z.infer<typeof deviceStateSchema>;

/**
 * A fact as the screen tells it, with who did it, when (RFC 3339 with offset) and how sure that is. `isLate` when no
 * server could judge it at its moment: it is recorded whatever it breaks, and flagged.
 */
export type NewFact = {
  draft: EventDraft;
  badge: string;
  at: string;
  uncertaintyMs?: number;
  isLate?: boolean;
};

/**
 * The device's own log of events that the server may not have. An event gets its id and number here, once; it leaves
 * when the server has answered and, if it was refused, somebody has read why.
 */
export type DeviceLog = {
  append(fact: NewFact): Promise<WireEvent>;
  /** In the order of their numbers. */
  entries(): Promise<DeviceEntry[]>;
  /** The server's answer: null reasons for recorded, which ends the entry. */
  settle(id: string, reasons: Refusal[] | null): Promise<void>;
  /** Tells a refused fact again, as one that happened whatever it breaks: a new event in place of the old one. */
  retell(id: string): Promise<WireEvent | null>;
  /**
   * Another device has used this one's numbers: the log was restored from a copy. It goes on under a new name, and
   * what the server has not answered yet gets new numbers, in order.
   */
  becomeNew(): Promise<void>;
  forget(id: string): Promise<void>;
  state(): Promise<DeviceState>;
};

/** Id, device and number of an event. */
export type Stamp = { id: string; device: string; deviceSeq: number };

/** The event that a fact becomes; throws on a fact that the schema refuses, before a number is spent on it. */
export function makeEvent(fact: NewFact, stamp: Stamp, schema: typeof eventSchema): WireEvent {
  const { draft, badge, at, uncertaintyMs = 0, isLate = false } = fact;
  return schema.parse({
    ...draft,
    ...stamp,
    at,
    uncertaintyMs,
    operator: badge,
    ...(isLate && { gate: 'record' }),
  });
}

/** The same fact as another event, to be recorded whatever it breaks. */
export function retoldEvent(event: WireEvent, stamp: Stamp): WireEvent {
  return { ...event, ...stamp, gate: 'record' };
}

/** The go that an event gives the result of, or null. */
export function startOf(event: WireEvent): string | null {
  return event.type === 'unit.processed' ? (event.body.startedAt ?? null) : null;
}
