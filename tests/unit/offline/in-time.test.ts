import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { contactNow, noteContact } from '@/lib/offline/contact';
import { ANSWER_LIMIT_MS, inTime } from '@/lib/offline/in-time';

const never = () => new Promise<string>(() => undefined);

describe('a question to the server', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    noteContact(true);
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('has its answer when the server is there', async () => {
    expect(await inTime(async () => 'go')).toBe('go');
    expect(contactNow().isOnline).toBe(true);
  });

  it('is not asked of a server that is known to be away', async () => {
    noteContact(false);
    const ask = vi.fn(never);
    expect(await inTime(ask)).toBeNull();
    expect(ask).not.toHaveBeenCalled();
  });

  it('waits once for a server that has fallen silent, and not again until it is heard', async () => {
    const first = inTime(never);
    await vi.advanceTimersByTimeAsync(ANSWER_LIMIT_MS - 1);
    expect(contactNow().isOnline).toBe(true);
    await vi.advanceTimersByTimeAsync(1);
    expect(await first).toBeNull();
    const ask = vi.fn(async () => 'go');
    expect(await inTime(ask)).toBeNull();
    noteContact(true);
    expect(await inTime(ask)).toBe('go');
    expect(ask).toHaveBeenCalledOnce();
  });
});
