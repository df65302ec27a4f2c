import type { AppendOutcome } from '@/lib/data/record/append-batch';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { type LoggedEvent, toLogged } from '@/lib/domain/events/logged-event';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import { judgeDelivery } from '@/lib/domain/people/judge-delivery';
import { type Principal, principalLabel } from '@/lib/domain/people/principal';
import { database } from '@/lib/server/database';
import { vouchedPeople } from '@/lib/server/people/delivery-pass';

/** What became of one event, as the wire tells it. */
export type EventResult = {
  id: string | null;
  outcome: 'recorded' | 'already_recorded' | 'refused';
  refusal?: Refusal & { also?: Refusal[] };
  flags?: Refusal[];
};

/** How a device delivers: it gives each number once, and brings the passes of those who did what it sends. */
type Delivery = { isNumberOnce?: boolean; passes?: readonly string[] };

/**
 * Judges and records events in the given order; the answer has one result an event, and is given once all of it is
 * durable. Malformed events are refused with pointers below `/events`; they never harm their neighbours.
 */
export async function appendEvents(
  events: readonly unknown[],
  principal: Principal,
  { isNumberOnce = false, passes = [] }: Delivery = {},
): Promise<EventResult[]> {
  const checked = events.map(check);
  const good = checked.flatMap((entry) => (entry.event === null ? [] : [entry.event]));
  const vouched = await vouchedPeople(passes);
  const judgeSender = (event: LoggedEvent) => judgeDelivery(event, principal, vouched);
  const outcomes =
    good.length === 0
      ? []
      : await database().queue.append(good, principalLabel(principal), { judgeSender, isNumberOnce });
  return checked.map((entry, index) => {
    if (entry.event === null) return entry.result;
    const outcome = outcomes.shift();
    if (outcome === undefined) throw new Error('The log answered for fewer events than it was given.');
    return resultOf({ id: entry.event.id, index, outcome });
  });
}

type Checked = { event: LoggedEvent } | { event: null; result: EventResult };

function check(input: unknown, index: number): Checked {
  const parsed = eventSchema.safeParse(input);
  if (parsed.success) return { event: toLogged(parsed.data) };
  const errors = inputErrors(parsed.error, `/events/${index}`);
  return { event: null, result: malformed(idOf(input), errors) };
}

function malformed(id: string | null, errors: InputError[]): EventResult {
  return { id, outcome: 'refused', refusal: { code: 'malformed', errors } };
}

function idOf(input: unknown): string | null {
  if (typeof input !== 'object' || input === null || !('id' in input)) return null;
  return typeof input.id === 'string' ? input.id.slice(0, 64) : null;
}

function resultOf(answer: { id: string; index: number; outcome: AppendOutcome }): EventResult {
  const { id, index, outcome } = answer;
  switch (outcome.outcome) {
    case 'already_recorded':
      return { id, outcome: 'already_recorded' };
    case 'recorded':
      return outcome.flags.length === 0
        ? { id, outcome: 'recorded' }
        : { id, outcome: 'recorded', flags: outcome.flags };
    case 'refused': {
      const [refusal, ...also] = outcome.reasons;
      if (refusal === undefined) throw new Error('An event was refused without a reason.');
      return { id, outcome: 'refused', refusal: also.length === 0 ? refusal : { ...refusal, also } };
    }
    case 'unstorable': {
      const detail = 'The database cannot hold a value of this event.';
      return malformed(id, [{ pointer: `/events/${index}`, code: 'unstorable', detail }]);
    }
    default:
      return outcome satisfies never;
  }
}
