import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clockStamp, measureClock, readClockStamp } from '@/lib/domain/clock/clock-exchange';
import {
  advanceClock,
  betterClock,
  type DeviceClock,
  doubtAbout,
  EARLIEST_MS,
  newDeviceClock,
  notAfter,
  stampOf,
  takeMeasurement,
} from '@/lib/domain/clock/device-clock';
import { UNCERTAINTY_MAX_MS } from '@/lib/domain/events/declare-event';
import { SimulatedDevice } from '@/tests/support/simulated-device';

const HOUR_MS = 3_600_000;
const YEAR_MS = 366 * 24 * HOUR_MS;

const spanMs = fc.oneof(
  fc.double({ min: 0, max: 2000, noNaN: true }),
  fc.double({ min: 0, max: 30 * HOUR_MS, noNaN: true }),
);
const setByMs = fc.oneof(
  fc.double({ min: -90_000, max: 90_000, noNaN: true }),
  fc.double({ min: -4 * YEAR_MS, max: 4 * YEAR_MS, noNaN: true }),
);
const delayMs = fc.oneof(
  fc.double({ min: 0, max: 40, noNaN: true }),
  fc.double({ min: 0, max: 60_000, noNaN: true }),
);
const drift = fc.double({ min: -95e-6, max: 95e-6, noNaN: true });

const step = fc.oneof(
  fc.record({ kind: fc.constant('work' as const), forMs: spanMs }),
  fc.record({ kind: fc.constant('set' as const), byMs: setByMs, isSeen: fc.boolean() }),
  fc.record({
    kind: fc.constant('sleep' as const),
    forMs: fc.double({ min: 1000, max: 30 * HOUR_MS, noNaN: true }),
    setByMs: fc.oneof(fc.constant(0), setByMs),
    isVisible: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('reload' as const),
    closedMs: spanMs,
    setByMs: fc.oneof(fc.constant(0), setByMs),
  }),
  fc.record({ kind: fc.constant('contact' as const), thereMs: delayMs, heldMs: delayMs, backMs: delayMs }),
  fc.record({
    kind: fc.constant('other_tab' as const),
    forMs: fc.double({ min: 0, max: 9000, noNaN: true }),
  }),
);

/** What the clock cannot tell from a shorter time: a clock set back by half to all of what nobody saw. */
const isHidden = (unseenMs: number, byMs: number) => byMs < -unseenMs * 0.49 && byMs > -unseenMs - 25;

function expectInside(clock: DeviceClock, device: SimulatedDevice): void {
  const { atMs, uncertaintyMs } = stampOf(clock);
  expect(Math.abs(atMs - device.trueMs)).toBeLessThanOrEqual(uncertaintyMs);
}

it('keeps the true time inside the doubt, whatever is set, sleeps, is reloaded or delayed', () => {
  let lookedCount = 0;
  fc.assert(
    fc.property(
      fc.record({ skewMs: setByMs, monotonicDrift: drift, wallDrift: drift }),
      fc.array(step, { minLength: 1, maxLength: 40 }),
      (start, steps) => {
        const device = new SimulatedDevice({ trueMs: Date.UTC(2026, 10, 25), ...start });
        let clock = newDeviceClock(device.read());
        let given: { atMs: number; trueMs: number }[] = [];
        for (const each of steps) {
          switch (each.kind) {
            case 'work':
              device.work(each.forMs);
              break;
            case 'set':
              if (!each.isSeen) device.hide();
              device.set(each.byMs);
              break;
            case 'sleep':
              // Nobody sets a clock behind a page that stays visible and asleep.
              if (each.setByMs !== 0 && each.isVisible) continue;
              if (isHidden(each.forMs, each.setByMs)) continue;
              if (!each.isVisible) device.hide();
              device.sleep(each.forMs);
              device.set(each.setByMs);
              break;
            case 'reload':
              if (isHidden(each.closedMs, each.setByMs)) continue;
              device.reload(each.closedMs);
              device.set(each.setByMs);
              break;
            case 'contact': {
              const measured = measureClock(device.exchange(each));
              expect(measured).not.toBeNull();
              if (measured === null) break;
              expect(Math.abs(measured.atMs - device.trueMs)).toBeLessThanOrEqual(measured.doubtMs);
              // RFC 5905: half of the round trip, however it is shared out.
              expect(measured.doubtMs).toBeLessThanOrEqual((each.thereMs + each.backMs) / 2 + 40);
              clock = takeMeasurement(clock, measured);
              expect(stampOf(clock).uncertaintyMs).toBeLessThanOrEqual(measured.doubtMs + 1002);
              break;
            }
            case 'other_tab': {
              const own = newDeviceClock(device.otherTab().read());
              device.work(each.forMs);
              clock = betterClock(advanceClock(own, device.read()), clock);
              break;
            }
            default:
              each satisfies never;
          }
          clock = advanceClock(clock, device.read());
          if (clock.estimate === null) {
            expect(stampOf(clock).uncertaintyMs).toBe(UNCERTAINTY_MAX_MS);
            continue;
          }
          lookedCount += 1;
          expectInside(clock, device);
          const { atMs } = stampOf(clock);
          given = given.filter((time) => device.trueMs - time.trueMs < HOUR_MS);
          for (const time of given)
            if (time.atMs <= atMs)
              expect(Math.abs(time.atMs - time.trueMs)).toBeLessThanOrEqual(doubtAbout(clock, time.atMs));
          clock = { ...clock, givenMs: atMs };
          given.push({ atMs, trueMs: device.trueMs });
        }
      },
    ),
    { numRuns: 2000 },
  );
  expect(lookedCount).toBeGreaterThan(5000);
});

it('has no doubt beyond drift and delay while nothing is set, even with a wall clock years away', () => {
  fc.assert(
    fc.property(setByMs, spanMs, (skewMs, forMs) => {
      const device = new SimulatedDevice({
        trueMs: Date.UTC(2026, 10, 25),
        skewMs,
        monotonicDrift: 90e-6,
        wallDrift: 90e-6,
      });
      const measured = measureClock(device.exchange({ thereMs: 4, heldMs: 3, backMs: 30 }));
      let clock = newDeviceClock(device.read());
      if (measured !== null) clock = takeMeasurement(clock, measured);
      for (let beat = 0; beat < 10; beat += 1) {
        device.work(forMs / 10);
        clock = advanceClock(clock, device.read());
      }
      expectInside(clock, device);
      expect(stampOf(clock).uncertaintyMs).toBeLessThanOrEqual(34 / 2 + 4 + forMs * 101e-6);
    }),
  );
});

it('pulls a time from the future back to now without losing what it did not exclude', () => {
  const doubt = fc.integer({ min: 0, max: UNCERTAINTY_MAX_MS });
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1e9 }),
      doubt,
      fc.double({ min: -1, max: 1, noNaN: true }),
      (agoMs, uncertaintyMs, where) => {
        const trueMs = EARLIEST_MS + 1e10;
        const stamp = { atMs: Math.round(trueMs + where * uncertaintyMs), uncertaintyMs };
        const now = { atMs: trueMs + agoMs, uncertaintyMs: 5 };
        const held = notAfter(stamp, now);
        expect(held.atMs).toBeLessThanOrEqual(now.atMs);
        expect(Math.abs(held.atMs - trueMs)).toBeLessThanOrEqual(held.uncertaintyMs);
      },
    ),
  );
});

it('reads a stamp for its own mark only', () => {
  const mark = fc.stringMatching(/^[\w-]{1,40}$/);
  fc.assert(
    fc.property(mark, mark, fc.nat(), fc.nat(), (own, other, receivedMs, transmittedMs) => {
      const stamp = clockStamp(own, { receivedMs, transmittedMs });
      expect(readClockStamp(own, stamp)).toEqual({ receivedMs, transmittedMs });
      if (other !== own) expect(readClockStamp(other, stamp)).toBeNull();
    }),
  );
  for (const mark of [null, '', 'a b', 'ä', 'x'.repeat(41)])
    expect(clockStamp(mark, { receivedMs: 1, transmittedMs: 2 })).toBeNull();
});
