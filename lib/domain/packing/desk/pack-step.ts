import type { PackDesk, PackDone, PackEffect, PackStep } from '@/lib/domain/packing/desk/pack-desk';
import type { EventDraft } from '@/lib/domain/station/event-draft';

/** A packing screen with what is to be done for it. */
export function packStep(state: PackDesk, ...effects: PackEffect[]): PackStep {
  return { state, effects };
}

/** The same screen with nothing to say about the past; a caution stays while its unit waits for its container. */
export function quiet(state: PackDesk): PackDesk {
  const isWaiting = state.caution !== null && state.units.includes(state.caution.unit);
  const caution = isWaiting ? state.caution : null;
  return { ...state, done: null, stop: null, notice: null, caution };
}

/** Hands a fact over; the screen waits for its answer. */
export function sendDone(state: PackDesk, sending: PackDone, draft: EventDraft): PackStep {
  return packStep({ ...state, sending }, { kind: 'record', draft });
}

/** Opens a container and puts the first waiting unit into it; the others follow as if they were scanned again. */
export function packWaiting(state: PackDesk, container: string): PackStep {
  const [unit, ...others] = state.units;
  const opened = { ...state, container, units: [], held: [...others, ...state.held] };
  return unit === undefined ? packStep(opened) : putIn(opened, unit, container);
}

/** A unit goes into the open container. */
export function putIn(state: PackDesk, unit: string, container: string): PackStep {
  const body = { unit, container };
  const done: PackDone = { what: 'packed', ...body, ...(state.isNew && { isNew: true }) };
  return sendDone(state, done, { type: 'unit.packed', body });
}

/** A container goes into another one. */
export function nestInto(
  state: PackDesk,
  { container, into, isNew }: { container: string; into: string; isNew: boolean },
): PackStep {
  const done: PackDone = { what: 'nested', container, other: into, ...(isNew && { isNew: true }) };
  return sendDone(state, done, { type: 'container.nested', body: { container, into } });
}
