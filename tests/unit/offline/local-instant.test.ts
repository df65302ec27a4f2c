import { afterEach, expect, it, vi } from 'vitest';
import { parseInstant } from '@/lib/domain/time';
import { localInstant } from '@/lib/offline/local-instant';

afterEach(() => {
  vi.unstubAllEnvs();
});

it.each([
  ['UTC', '2026-03-02T08:15:30.120+00:00'],
  ['Asia/Kathmandu', '2026-03-02T14:00:30.120+05:45'],
  ['America/St_Johns', '2026-03-02T04:45:30.120-03:30'],
])('says the moment with the offset of %s', (zone, text) => {
  vi.stubEnv('TZ', zone);
  const moment = new Date('2026-03-02T08:15:30.120Z');
  expect(localInstant(moment)).toBe(text);
  expect(parseInstant(text)).toBe(moment.getTime() * 1000);
});
