import type { Certainty } from '@/lib/domain/genealogy/answer';
import { type Condition, conditionSchema } from '@/lib/domain/genealogy/narrow-question';
import type { TraceQuestion } from '@/lib/ui/trace/trace-address';

/** The conditions as the one parameter of an address, of the screen and of the CSV. */
export function narrowQuery(conditions: readonly Condition[]): string {
  return new URLSearchParams({ conditions: JSON.stringify(conditions) }).toString();
}

/** Address of the screen with a question: it can be shared, and printed with its answer. */
export function narrowAddress(conditions: readonly Condition[], certainty?: Certainty): string {
  if (conditions.length === 0) return '/trace/narrow';
  const group = certainty === undefined ? '' : `&certainty=${certainty}`;
  return `/trace/narrow?${narrowQuery(conditions)}${group}`;
}

/** A where-used question as the first conditions of a narrowing. */
export function conditionsOf(question: TraceQuestion): Condition[] {
  const { item, lot, part, station, operator, from, to, place = [] } = question;
  const isUsed = [item, lot, part].some((each) => each !== undefined);
  const asked = { station, operator, from, to, ...(isUsed && { item, lot, part }) };
  const drafts = [
    { must: true, kind: isUsed ? 'used' : 'processed', ...asked },
    ...(place.length === 1 ? [{ must: true, kind: 'place', place: place[0] }] : []),
  ];
  return drafts.flatMap((draft) => {
    const given = Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== undefined));
    const parsed = conditionSchema.safeParse(given);
    return parsed.success ? [parsed.data] : [];
  });
}
