import { z } from 'zod';
import { eventSchema, type WireEvent } from '@/lib/domain/events/catalogue';
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
  /** Who was signed in: only their own session may send it. */
  badge: z.string(),
  event: eventSchema,
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

/** A fact as the screen tells it, with who did it, when (RFC 3339 with offset) and how sure that is. */
export type NewFact = { draft: EventDraft; badge: string; at: string; uncertaintyMs?: number };

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
  forget(id: string): Promise<void>;
  state(): Promise<DeviceState>;
};

/** The event that a fact becomes; throws on a fact that its schema refuses, before a number is spent on it. */
export function makeEvent(
  { draft, badge, at, uncertaintyMs = 0 }: NewFact,
  stamp: { id: string; device: string; deviceSeq: number },
): WireEvent {
  return eventSchema.parse({ ...draft, ...stamp, at, uncertaintyMs, operator: badge });
}

/** The go that an event gives the result of, or null. */
export function startOf(event: WireEvent): string | null {
  return event.type === 'unit.processed' ? (event.body.startedAt ?? null) : null;
}
