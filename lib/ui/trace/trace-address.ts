import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

/** A where-used question as an address carries it: what is asked, without the page of the answer. */
export type TraceQuestion = Partial<Omit<WhereUsedQuestion, 'limit' | 'cursor'>>;

const ORDER = [
  'item',
  'lot',
  'part',
  'station',
  'operator',
  'from',
  'to',
  'at',
  'knownAt',
  'certainty',
  'place',
  'relation',
] as const satisfies readonly (keyof TraceQuestion)[];

/** The question as query parameters, always in the same order, so that one question has one address. */
export function traceQuery(question: TraceQuestion): string {
  const parameters = new URLSearchParams();
  for (const name of ORDER) {
    const value = question[name];
    const text = Array.isArray(value) ? value.join(',') : value;
    if (text !== undefined && text !== '') parameters.set(name, text);
  }
  return parameters.toString();
}

/** Address of the trace screen with a question's answer. */
export function traceAddress(question: TraceQuestion): string {
  return `/trace?${traceQuery(question)}`;
}

/** Query of the difference of a question's answer; what it is narrowed to is left out. */
export function differenceQuery(
  question: TraceQuestion,
  { since, until }: { since: string; until: string | undefined },
): string {
  const { certainty: _, place: __, relation: ___, knownAt: ____, ...asked } = question;
  const parameters = new URLSearchParams(traceQuery(asked));
  parameters.set('since', since);
  if (until !== undefined) parameters.set('until', until);
  return parameters.toString();
}

/** Address of the page that asks what became of a question's answer, at once where a moment is asked about already. */
export function differenceAddress(question: TraceQuestion): string {
  const { knownAt, certainty: _, place: __, relation: ___, ...asked } = question;
  const query =
    knownAt === undefined
      ? traceQuery(asked)
      : differenceQuery(question, { since: knownAt, until: undefined });
  return `/trace/difference?${query}`;
}
