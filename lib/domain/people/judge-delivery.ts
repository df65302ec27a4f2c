import type { EventType, WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal, Principal } from '@/lib/domain/people/principal';

/** Events that are nothing but somebody's decision: without the right to decide, nothing has happened. */
const DECISIONS: readonly EventType[] = [
  'unit.signed',
  'hold.placed',
  'hold.released',
  'exception.cleared',
  'event.voided',
];

/** A refusal ends the matter; a flag stays with the event. */
export type DeliveryJudgement = { refusal: Refusal | null; delivery: Refusal | null };

/**
 * What speaks against who sends an event. A device delivers what everyone at it has done: an event of somebody else is
 * judged by the rights of the one who did it, if their pass shows that they signed in there. What has physically
 * happened, and is only to be recorded, is not lost for it: it is flagged.
 */
export function judgeDelivery(
  { type, operator, gate }: WireEvent,
  sender: Principal,
  vouched: ReadonlyMap<string, PersonPrincipal>,
): DeliveryJudgement {
  const mayNot: Refusal = { code: 'not_permitted', type };
  if (sender.kind === 'token' || operator === undefined || operator === sender.badge)
    return { refusal: may(sender, `event:${type}`) ? null : mayNot, delivery: null };
  const doer = vouched.get(operator);
  const isFact = gate === 'record' && !DECISIONS.includes(type);
  if (!may(doer ?? sender, `event:${type}`))
    return isFact && doer !== undefined
      ? { refusal: null, delivery: { ...mayNot, operator } }
      : { refusal: mayNot, delivery: null };
  const notVouched: Refusal = { code: 'not_vouched', operator, by: sender.badge };
  if (doer !== undefined || gate !== 'record') return { refusal: null, delivery: null };
  return isFact ? { refusal: null, delivery: notVouched } : { refusal: notVouched, delivery: null };
}
