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
