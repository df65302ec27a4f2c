import { randomUUID } from 'node:crypto';
import { CLOCK_HEADER, clockStamp } from '@/lib/domain/clock/clock-exchange';
import { type Action, may } from '@/lib/domain/people/permissions';
import { type Principal, principalLabel } from '@/lib/domain/people/principal';
import { authenticate } from '@/lib/server/http/authenticate';
import { isSameOrigin } from '@/lib/server/http/is-same-origin';
import { isUnavailable } from '@/lib/server/http/is-unavailable';
import { ProblemError, problemResponse } from '@/lib/server/http/problem';
import { log } from '@/lib/server/log';

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'] as const;
const SLOW_MS = 2000;

type Method = (typeof METHODS)[number];

/** What answers one method: for everyone, or for those whom the table of permissions lets do the action. */
export type Handler =
  | { action: 'public'; handle(request: Request, context: { requestId: string }): Promise<Response> }
  | {
      action: Action;
      handle(request: Request, context: { principal: Principal; requestId: string }): Promise<Response>;
    };

/** The methods that a route takes. */
export type RouteDefinition = Partial<Record<Exclude<Method, 'OPTIONS'>, Handler>>;

type RouteExports = Record<Method, (request: Request) => Promise<Response>>;

/**
 * Makes a route's exports: `export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({ … })`. In this
 * order: who asks (401), whether the method exists (405), whether our own page asks (403), whether they may (403).
 * Whatever a handler throws becomes a problem document, and the log keeps what the document does not say.
 */
export function defineRoute(definition: RouteDefinition): RouteExports {
  const answer = (request: Request): Promise<Response> => answerAndLog(definition, request);
  return {
    GET: answer,
    POST: answer,
    PUT: answer,
    PATCH: answer,
    DELETE: answer,
    OPTIONS: answer,
  };
}

async function answerAndLog(definition: RouteDefinition, request: Request): Promise<Response> {
  const requestId = randomUUID();
  const startedMs = performance.now();
  const receivedMs = Date.now();
  const facts: RequestFacts = { requestId, method: request.method, path: new URL(request.url).pathname };
  const response = await answerOrProblem({ definition, request, facts });
  const elapsedMs = Math.round(performance.now() - startedMs);
  const level = elapsedMs >= SLOW_MS ? 'warn' : 'debug';
  log()[level]({ ...facts, status: response.status, elapsedMs }, 'request');
  const mark = request.headers.get(CLOCK_HEADER);
  return withHeaders({
    response,
    requestId,
    hasBody: request.method !== 'HEAD',
    clock: { mark, receivedMs },
  });
}

type RequestFacts = { requestId: string; method: string; path: string; by?: string };
type Work = { definition: RouteDefinition; request: Request; facts: RequestFacts };

async function answerOrProblem(work: Work): Promise<Response> {
  try {
    return await decide(work);
  } catch (error) {
    if (error instanceof ProblemError) return problemResponse(error.code, error.facts);
    if (isUnavailable(error)) {
      log().error({ ...work.facts, err: error }, 'database unavailable');
      const detail = 'The database cannot be reached. Send the same request again in a moment.';
      return problemResponse('unavailable', { detail, headers: { 'retry-after': '2' } });
    }
    log().error({ ...work.facts, err: error }, 'request failed');
    const detail = `The server met an error that is not yours; its log has it under ${work.facts.requestId}.`;
    return problemResponse('internal_error', { detail });
  }
}

async function decide({ definition, request, facts }: Work): Promise<Response> {
  const { requestId } = facts;
  const handler = handlerOf(definition, request.method);
  if (handler?.action === 'public') return handler.handle(request, { requestId });
  if (handler === undefined && isPublic(definition)) throw methodNotAllowed(definition);

  const principal = await authenticate(request);
  if (principal === null)
    throw new ProblemError('unauthenticated', {
      detail: 'This address answers only with a session or the API token.',
      headers: { 'www-authenticate': 'Bearer realm="reelkin"' },
    });
  facts.by = principalLabel(principal);
  if (handler === undefined) throw methodNotAllowed(definition);
  if (principal.kind === 'person' && !isSameOrigin(request))
    throw new ProblemError('cross_site', {
      detail: 'A session is used from the pages of its own server only.',
    });
  if (!may(principal, handler.action))
    throw new ProblemError('not_permitted', { detail: `This needs the right to do: ${handler.action}.` });
  return handler.handle(request, { principal, requestId });
}

function handlerOf(definition: RouteDefinition, method: string): Handler | undefined {
  switch (method) {
    case 'HEAD':
    case 'GET':
      return definition.GET;
    case 'POST':
    case 'PUT':
    case 'PATCH':
    case 'DELETE':
      return definition[method];
    default:
      return undefined;
  }
}

function isPublic(definition: RouteDefinition): boolean {
  const handlers = Object.values(definition);
  return handlers.length > 0 && handlers.every((handler) => handler.action === 'public');
}

function methodNotAllowed(definition: RouteDefinition): ProblemError {
  const taken = METHODS.filter((method) => handlerOf(definition, method) !== undefined);
  const allow = taken.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method])).join(', ');
  return new ProblemError('method_not_allowed', { detail: `It takes: ${allow}.`, headers: { allow } });
}

/** A response's own headers may be sealed, so it is made again around the same body; HEAD's is not even begun. */
async function withHeaders(answer: {
  response: Response;
  requestId: string;
  hasBody: boolean;
  clock: { mark: string | null; receivedMs: number };
}): Promise<Response> {
  const { response, requestId, hasBody, clock } = answer;
  if (!hasBody) await response.body?.cancel();
  const headers = new Headers(response.headers);
  headers.set('x-request-id', requestId);
  if (!headers.has('cache-control')) headers.set('cache-control', 'no-store');
  const { status, statusText } = response;
  const stamp = clockStamp(clock.mark, { receivedMs: clock.receivedMs, transmittedMs: Date.now() });
  if (stamp !== null) headers.set(CLOCK_HEADER, stamp);
  return new Response(hasBody ? response.body : null, { status, statusText, headers });
}
