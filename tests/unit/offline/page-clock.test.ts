import { afterEach, describe, expect, it, vi } from 'vitest';
import { CLOCK_HEADER, clockStamp } from '@/lib/domain/clock/clock-exchange';
import type { DeviceClock } from '@/lib/domain/clock/device-clock';
import { UNCERTAINTY_MAX_MS } from '@/lib/domain/events/declare-event';
import { PageClock } from '@/lib/offline/page-clock';
import { SimulatedDevice } from '@/tests/support/simulated-device';

const YEAR_MS = 366 * 24 * 3_600_000;
const NOW_MS = Date.UTC(2026, 10, 25);

/** A busy machine may bring a timer late. */
const PATIENCE = { timeout: 30_000 };

afterEach(() => vi.unstubAllGlobals());

/** A tablet years ahead, a server that answers after 40 ms, and what the tablet keeps. */
function scene() {
  const device = new SimulatedDevice({
    trueMs: NOW_MS,
    skewMs: 5 * YEAR_MS,
    monotonicDrift: 50e-6,
    wallDrift: 50e-6,
  });
  const kept: { clock: DeviceClock | null } = { clock: null };
  const page = () =>
    new PageClock({
      source: () => ({ read: () => device.read() }),
      keep: async (merge) => {
        kept.clock = merge(kept.clock);
      },
    });
  const server = { marks: [] as string[], answer: (mark: string): string | null => mark };
  vi.stubGlobal('fetch', async (_path: string, init: RequestInit) => {
    const mark = new Headers(init.headers).get(CLOCK_HEADER) ?? '';
    server.marks.push(mark);
    device.work(25);
    const receivedMs = Math.floor(device.trueMs);
    const stamp = clockStamp(server.answer(mark), { receivedMs, transmittedMs: receivedMs });
    device.work(15);
    if (stamp === null) throw new TypeError('Failed to fetch');
    return new Response('{}', { headers: { [CLOCK_HEADER]: stamp } });
  });
  vi.stubGlobal('document', { addEventListener() {}, removeEventListener() {} });
  vi.stubGlobal('window', { addEventListener() {}, removeEventListener() {} });
  const expectRight = (clock: PageClock) => {
    const { atMs, uncertaintyMs } = clock.stamp();
    expect(Math.abs(atMs - device.trueMs)).toBeLessThanOrEqual(uncertaintyMs);
    return uncertaintyMs;
  };
  return { device, kept, page, server, expectRight };
}

describe('the clock of a page', () => {
  it('gives right times on a tablet that is five years ahead, and says that it is', async () => {
    const { page, expectRight } = scene();
    const clock = page();
    expect(clock.stamp().uncertaintyMs).toBe(UNCERTAINTY_MAX_MS);
    await clock.fetch('/api/clock');
    expect(expectRight(clock)).toBeLessThan(1100);
    expect(clock.notice()).toMatchObject({ kind: 'wrong' });
  });

  it('says that it has never had contact, once it has tried', async () => {
    const { page, server } = scene();
    server.answer = () => null;
    const clock = page();
    expect(clock.notice()).toBeNull();
    await expect(clock.fetch('/api/clock')).rejects.toThrow();
    expect(clock.notice()).toEqual({ kind: 'no_contact' });
    expect(clock.contactMs()).toBeNull();
  });

  it('believes no answer to another request: one that was kept, or came twice', async () => {
    const { page, server } = scene();
    const clock = page();
    await clock.fetch('/api/clock');
    const [first = ''] = server.marks;
    const heard = clock.contactMs();
    server.answer = () => first;
    await clock.fetch('/api/clock');
    expect(new Set(server.marks).size).toBe(2);
    expect(clock.contactMs()).toBe(heard);
  });

  it('goes on over a reload without contact, doubting as much as nobody saw', async () => {
    const { page, device, server, expectRight, kept } = scene();
    const stop = page().start();
    await vi.waitFor(() => expect(kept.clock?.estimate).not.toBeNull(), PATIENCE);
    await vi.waitFor(() => expect(kept.clock?.reading.monotonicMs).toBeGreaterThan(50), PATIENCE);
    stop();
    server.answer = () => null;
    device.reload(3000);
    const clock = page();
    const stopAgain = clock.start();
    await vi.waitFor(() => expect(expectRight(clock)).toBeLessThan(3500), PATIENCE);
    expect(expectRight(clock)).toBeGreaterThan(2900);
    stopAgain();
  });

  it('notices that the clock was set while there was no contact, and is right all the same', async () => {
    const { page, device, server, expectRight } = scene();
    const clock = page();
    await clock.fetch('/api/clock');
    server.answer = () => null;
    device.work(60_000);
    device.set(-5 * YEAR_MS);
    expect(expectRight(clock)).toBeLessThan(100);
    await expect(clock.fetch('/api/events')).rejects.toThrow();
    expect(clock.notice()).toMatchObject({ kind: 'set', byMs: expect.closeTo(-5 * YEAR_MS, -3) });
    server.answer = (mark) => mark;
    await clock.fetch('/api/events');
    expect(clock.notice()).toBeNull();
  });
});
