import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';

const MINUTE_S = 60;
const DAY_S = 24 * 3600;

/** Wrong answers for one badge before it has to wait five minutes: a typing hand, not a machine. */
export const BADGE_ATTEMPTS_MAX = 5;
/** Wrong answers for one badge in a day: a PIN of four digits has ten thousand. */
export const BADGE_ATTEMPTS_A_DAY_MAX = 50;
/** Wrong answers from one address in a quarter of an hour; a whole plant may share one. */
export const ADDRESS_ATTEMPTS_MAX = 100;

type Limiters = { badge: RateLimiterMemory; badgeDay: RateLimiterMemory; address: RateLimiterMemory };

// Counted for the process, whichever bundle asks first.
declare global {
  var reelkinAttempts: Limiters | undefined;
}

function limiters(): Limiters {
  globalThis.reelkinAttempts ??= {
    badge: new RateLimiterMemory({ points: BADGE_ATTEMPTS_MAX, duration: 5 * MINUTE_S }),
    badgeDay: new RateLimiterMemory({ points: BADGE_ATTEMPTS_A_DAY_MAX, duration: DAY_S }),
    address: new RateLimiterMemory({ points: ADDRESS_ATTEMPTS_MAX, duration: 15 * MINUTE_S }),
  };
  return globalThis.reelkinAttempts;
}

/** Whose attempt it is; `badge` is what was typed, known or not. */
export type Attempt = { badge: string; address: string };

/**
 * Counts an attempt before it is judged, so that many at once gain nothing. Null when it may go on, else the seconds
 * to wait. An attempt that succeeds is given back with `forgiveAttempt`.
 */
export async function countAttempt({ badge, address }: Attempt): Promise<number | null> {
  const { badge: byBadge, badgeDay, address: byAddress } = limiters();
  return (
    (await secondsToWait(byAddress, address)) ??
    (await secondsToWait(byBadge, badge)) ??
    (await secondsToWait(badgeDay, badge))
  );
}

/** Takes a right answer out of the count, and with it the badge's wrong ones. */
export async function forgiveAttempt({ badge, address }: Attempt): Promise<void> {
  await limiters().address.reward(address, 1);
  await forgetAttempts(badge);
}

/** Lets a badge try again at once, as after an administrator gave it a new PIN. */
export async function forgetAttempts(badge: string): Promise<void> {
  await limiters().badge.delete(badge);
  await limiters().badgeDay.delete(badge);
}

async function secondsToWait(limiter: RateLimiterMemory, key: string): Promise<number | null> {
  try {
    await limiter.consume(key);
    return null;
  } catch (refused) {
    if (refused instanceof RateLimiterRes) return Math.max(1, Math.ceil(refused.msBeforeNext / 1000));
    throw refused;
  }
}
