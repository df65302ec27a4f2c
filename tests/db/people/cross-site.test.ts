import { expect, test } from 'vitest';
import { GET, POST } from '@/app/api/events/route';
import { cookieOfRole, databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';

databaseWithPeople();

const foreign = { origin: 'https://elsewhere.example', host: 'reelkin.test', 'sec-fetch-site': 'cross-site' };
const own = { origin: 'http://reelkin.test', host: 'reelkin.test', 'sec-fetch-site': 'same-origin' };

async function post(headers: Record<string, string>): Promise<[number, unknown]> {
  const response = await POST(
    new Request('http://reelkin.test/api/events', {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: '{"events":[]}',
    }),
  );
  const problem: unknown = await response.json();
  return [response.status, problem];
}

test('another site cannot use the session of a browser to change anything', async () => {
  const cookie = await cookieOfRole('operator');
  expect(await post({ ...cookie, ...foreign })).toMatchObject([403, { type: '/problems/cross_site' }]);
  expect(await post({ ...cookie, ...own })).toMatchObject([400, { type: '/problems/malformed' }]);
  // Nothing that a browser adds by itself speaks for the token, so it may come from anywhere.
  expect(await post({ authorization: `Bearer ${TEST_API_TOKEN}`, ...foreign })).toMatchObject([400, {}]);
});

test('a wrong Authorization header is not rescued by a good cookie', async () => {
  const cookie = await cookieOfRole('operator');
  for (const authorization of ['Bearer wrong', 'Bearer ', 'Basic eDp5', `bearer${TEST_API_TOKEN}`, ''])
    expect(await post({ ...cookie, authorization })).toMatchObject([
      401,
      { type: '/problems/unauthenticated' },
    ]);
});

test('a cookie that was tampered with is nobody', async () => {
  const { cookie = '' } = await cookieOfRole('operator');
  for (const text of [
    cookie.slice(0, -3),
    `${cookie}0`,
    cookie.replace('Fe26', 'Fe27'),
    'reelkin_session=%%%',
  ])
    expect(
      (await GET(new Request('http://reelkin.test/api/events', { headers: { cookie: text } }))).status,
    ).toBe(401);
});
