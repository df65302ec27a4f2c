import { expect, test } from 'vitest';
import { isSameOrigin } from '@/lib/server/http/is-same-origin';

const by = (method: string, headers: Record<string, string>): boolean =>
  isSameOrigin(new Request('http://reelkin.plant/api/events', { method, headers }));

test('a browser that says where a request comes from is believed', () => {
  expect(by('POST', { 'sec-fetch-site': 'same-origin' })).toBe(true);
  expect(by('POST', { 'sec-fetch-site': 'none' })).toBe(true);
  expect(
    by('POST', { 'sec-fetch-site': 'same-site', origin: 'http://reelkin.plant', host: 'reelkin.plant' }),
  ).toBe(false);
  expect(by('PUT', { 'sec-fetch-site': 'cross-site' })).toBe(false);
});

test('else the origin must be the host that was asked, also behind a proxy', () => {
  expect(by('POST', { origin: 'http://reelkin.plant:3000', host: 'reelkin.plant:3000' })).toBe(true);
  expect(
    by('POST', { origin: 'https://r.plant', host: '10.0.0.4:3000', 'x-forwarded-host': 'r.plant' }),
  ).toBe(true);
  expect(by('POST', { origin: 'http://reelkin.plant.evil.example', host: 'reelkin.plant' })).toBe(false);
  expect(by('DELETE', { origin: 'null', host: 'reelkin.plant' })).toBe(false);
});

test('what changes nothing, and what no browser sent, is let through', () => {
  expect(by('GET', { 'sec-fetch-site': 'cross-site' })).toBe(true);
  expect(by('POST', {})).toBe(true);
});
