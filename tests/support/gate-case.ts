import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { Scene } from '@/tests/support/known-builder';

/** A rule at its edge: a scene in which the event is refused for exactly one reason, and the nearest in which it goes. */
export type GateCase = {
  rule: string;
  given: Scene;
  when: WireEvent;
  /** The only reason. */
  refuses: Refusal;
  /** What is different in the neighbouring case that goes. */
  goes: { because: string; given?: Scene; when?: WireEvent };
};

/** A unit that has passed its whole route and is signed off. */
export const FINISHED = { passed: [10, 20, 30], signed: true };
/** Where the placer has all that WX4 draws there. */
export const PLACER_READY = {
  slots: { F1: 'R1' },
  items: { R1: { part: 'C-100N', lot: 'L1' } },
} satisfies Scene;
/** The same of the printer. */
export const PRINTER_READY = {
  slots: { stencil: 'S1' },
  items: { S1: { kind: 'stencil' } },
} satisfies Scene;
