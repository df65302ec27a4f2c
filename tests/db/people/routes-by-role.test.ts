import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type Action, may } from '@/lib/domain/people/permissions';
import type { Principal } from '@/lib/domain/people/principal';
import { ROLES } from '@/lib/domain/people/roles';
import { cookieOfRole, databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';

databaseWithPeople();

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'] as const;
type Method = (typeof METHODS)[number];

/** What each route takes and from whom. A route that is not here fails the test, and so does one that is gone. */
const EXPECTED: Record<string, Partial<Record<Method, Action | 'public'>>> = {
  '[[...path]]': {
    GET: 'contract',
    POST: 'contract',
    PUT: 'contract',
    PATCH: 'contract',
    DELETE: 'contract',
  },
  changeover: { GET: 'screen:changeover' },
  check: { POST: 'check' },
  clock: { GET: 'clock' },
  devices: { GET: 'screen:devices' },
  events: { POST: 'events' },
  exceptions: { GET: 'screen:exceptions' },
  floor: { GET: 'screen:floor' },
  health: { GET: 'public' },
  holds: { GET: 'screen:holds' },
  labels: { POST: 'event:label.printed' },
  'openapi.json': { GET: 'contract' },
  live: { GET: 'check' },
  pass: { POST: 'events' },
  pack: { GET: 'screen:pack' },
  plant: { GET: 'plant:read', PUT: 'plant:write' },
  'plant/preview': { POST: 'plant:write' },
  product: { GET: 'plant:read' },
  replica: { GET: 'screen:station' },
  scan: { GET: 'check' },
  station: { GET: 'screen:station' },
  stations: { GET: 'check' },
  'trace/as-built': { GET: 'trace' },
  'trace/difference': { GET: 'trace' },
  'trace/difference.csv': { GET: 'trace' },
  'trace/narrow': { POST: 'narrow' },
  'trace/narrow.csv': { GET: 'narrow' },
  'trace/genealogy': { GET: 'trace' },
  'trace/slot-timeline': { GET: 'trace' },
  'trace/where-used': { GET: 'trace' },
  'trace/where-used.csv': { GET: 'trace' },
};

const handlerSchema = z.custom<(request: Request) => Promise<Response>>(
  (value) => typeof value === 'function',
);
const routeSchema = z.object({
  GET: handlerSchema,
  POST: handlerSchema,
  PUT: handlerSchema,
  PATCH: handlerSchema,
  DELETE: handlerSchema,
  OPTIONS: handlerSchema,
  // Next answers HEAD by GET where a route does not export it.
  HEAD: z.undefined().optional(),
});

const folder = join(process.cwd(), 'app/api');
const routes = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('route.ts'))
  .map((file) => file.replaceAll('\\', '/').replace(/\/route\.ts$/, ''))
  .sort();

type Asker = { name: string; principal: Principal | null; headers: Record<string, string> };
const askers: Asker[] = [
  { name: 'nobody', principal: null, headers: {} },
  { name: 'a wrong token', principal: null, headers: { authorization: 'Bearer wrong' } },
  { name: 'a forged cookie', principal: null, headers: { cookie: 'reelkin_session=Fe26.2*1*a*b*c*d*e*f~2' } },
  {
    name: 'the token',
    principal: { kind: 'token' },
    headers: { authorization: `Bearer ${TEST_API_TOKEN}` },
  },
];

beforeAll(async () => {
  for (const role of ROLES) {
    const principal: Principal = { kind: 'person', badge: `test-${role}`, role };
    askers.push({ name: role, principal, headers: await cookieOfRole(role) });
  }
});

async function ask(route: string, method: string, headers: Record<string, string>): Promise<Response> {
  const url = pathToFileURL(join(folder, route, 'route.ts')).href;
  const handlers = routeSchema.parse(await import(/* @vite-ignore */ url));
  const request = new Request(`http://reelkin.test/api/${route.replace('[[...path]]', 'nowhere')}`, {
    method,
    headers: { ...headers, 'content-type': 'application/json' },
    ...(method === 'GET' || method === 'HEAD' ? {} : { body: '{"none of any schema": 1}' }),
  });
  const name = method === 'HEAD' ? 'GET' : z.enum(METHODS).parse(method);
  return handlers[name](request);
}

/** The statuses that answer a request before its handler sees it, or null when the handler is to see it. */
function refusalOf(
  action: Action | 'public' | undefined,
  isPublicRoute: boolean,
  asker: Asker,
): number | null {
  if (action === 'public') return null;
  if (asker.principal === null && !isPublicRoute) return 401;
  if (action === undefined) return 405;
  return asker.principal !== null && may(asker.principal, action) ? null : 403;
}

test('every route is expected, and every expected route exists', () => {
  expect(routes.length).toBeGreaterThan(0);
  expect(routes).toEqual(Object.keys(EXPECTED).sort());
});

describe.each(routes)('/api/%s', (route) => {
  const expected = EXPECTED[route] ?? {};
  const isPublicRoute = Object.values(expected).every((action) => action === 'public');

  test.each([...METHODS, 'HEAD'] as const)('%s by everyone', async (method) => {
    const action = method === 'HEAD' ? expected.GET : expected[method];
    for (const asker of askers) {
      const response = await ask(route, method, asker.headers);
      const refusal = refusalOf(action, isPublicRoute, asker);
      const told = [asker.name, [401, 403, 405].includes(response.status) ? response.status : null];
      expect(told).toEqual([asker.name, refusal]);
      expect(response.status).not.toBe(500);
      expect(response.headers.get('x-request-id')).not.toBeNull();
      if (response.status >= 400 && action !== 'public')
        expect(response.headers.get('content-type')).toBe('application/problem+json');
      if (response.status === 405)
        expect(response.headers.get('allow')?.split(', ')).toEqual(
          METHODS.flatMap((taken) =>
            expected[taken] === undefined ? [] : taken === 'GET' ? ['GET', 'HEAD'] : [taken],
          ),
        );
      if (method === 'HEAD') expect(await response.text()).toBe('');
    }
  });
});
