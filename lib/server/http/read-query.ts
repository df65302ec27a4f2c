import type { z } from 'zod';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import { ProblemError } from '@/lib/server/http/problem';

const ERRORS_MAX = 100;

/**
 * Reads a request's query parameters by a strict schema over an object of strings. Throws a `ProblemError` (400) with
 * a pointer to each parameter that is unknown, repeated or wrong.
 */
export function readQuery<T extends z.ZodType>(request: Request, schema: T): z.output<T> {
  const parameters = [...new URL(request.url).searchParams];
  const given: Record<string, string> = Object.assign(Object.create(null), Object.fromEntries(parameters));
  const parsed = schema.safeParse(given);
  const errors = [...repeatedErrors(parameters), ...(parsed.success ? [] : inputErrors(parsed.error))];
  if (parsed.success && errors.length === 0) return parsed.data;
  throw new ProblemError('malformed', { detail: 'The query has faults.', errors });
}

function repeatedErrors(parameters: [string, string][]): InputError[] {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const [name] of parameters) {
    if (seen.has(name)) repeated.add(name);
    seen.add(name);
  }
  return [...repeated].slice(0, ERRORS_MAX).map((name) => ({
    pointer: `/${name.slice(0, 200).replaceAll('~', '~0').replaceAll('/', '~1')}`,
    code: 'repeated',
    detail: 'This parameter may be given once.',
  }));
}
