import type { InputError } from '@/lib/domain/input-errors';

/** Every way in which a request fails, with its status and title; RFC 9457 calls this the problem's type. */
const PROBLEMS = {
  malformed: { status: 400, title: 'The request is malformed' },
  unauthenticated: { status: 401, title: 'Sign in or send the API token' },
  not_permitted: { status: 403, title: 'Your role may not do this' },
  cross_site: { status: 403, title: 'The request came from another site' },
  not_found: { status: 404, title: 'There is no such thing here' },
  method_not_allowed: { status: 405, title: 'This address does not take this method' },
  conflict: { status: 409, title: 'The request does not fit the present state' },
  body_too_large: { status: 413, title: 'The body is too large' },
  unsupported_media_type: { status: 415, title: 'The body must be JSON' },
  too_many_requests: { status: 429, title: 'Too many attempts' },
  internal_error: { status: 500, title: 'The server failed' },
  unavailable: { status: 503, title: 'The database cannot be reached' },
} as const;

export type ProblemCode = keyof typeof PROBLEMS;

/** What a problem says beyond its type: one sentence, faults of the input with pointers, and headers. */
export type ProblemFacts = { detail: string; errors?: InputError[]; headers?: Record<string, string> };

/** A problem document (RFC 9457, application/problem+json). */
export function problemResponse(code: ProblemCode, { detail, errors, headers }: ProblemFacts): Response {
  const { status, title } = PROBLEMS[code];
  const document = { type: `/problems/${code}`, title, status, detail, ...(errors && { errors }) };
  return new Response(JSON.stringify(document), {
    status,
    headers: { 'content-type': 'application/problem+json', ...headers },
  });
}

/** Ends a route's work from anywhere below it with a problem; `defineRoute` answers it. */
export class ProblemError extends Error {
  override name = 'ProblemError';
  readonly code: ProblemCode;
  readonly facts: ProblemFacts;

  constructor(code: ProblemCode, facts: ProblemFacts) {
    super(facts.detail);
    this.code = code;
    this.facts = facts;
  }
}
