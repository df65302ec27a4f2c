import { describe, expect, it } from 'vitest';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { EventSender, pauseMs, type SenderState } from '@/lib/offline/event-sender';
import { memoryDeviceLog } from '@/lib/offline/memory-device-log';
import type { Posted } from '@/lib/offline/post-events';

const AT = '2026-03-02T08:00:00.000+00:00';
const pass = (unit: string) =>
  ({ type: 'unit.processed', station: 'S-1', body: { unit, result: 'pass' } }) as const;

function recorded(events: readonly WireEvent[]): Posted {
  return {
    kind: 'answered',
    results: events.map(({ id }) => ({ id, outcome: 'recorded' as const })),
  };
}

/** A sender whose server answers as told, request after request; the last answer stays. */
function scene(answers: ((events: readonly WireEvent[]) => Posted)[]) {
  const log = memoryDeviceLog();
  const posted: string[][] = [];
  const states: SenderState[] = [];
  const settled: [string, Refusal[] | null][] = [];
  const sender = new EventSender({
    log,
    badge: 'op-1',
    async post(events) {
      posted.push(events.map((event) => event.id));
      const answer = answers[Math.min(posted.length, answers.length) - 1];
      if (answer === undefined) throw new Error('no answer');
      return answer(events);
    },
    onState: (state) => states.push(state),
    onSettled: (id, reasons) => settled.push([id, reasons]),
    alone: (work) => work(),
    pause: async () => undefined,
    random: () => 0.5,
  });
  return { log, sender, posted, states, settled };
}

describe('the sender', () => {
  it('sends in the order of the numbers, and keeps nothing that is recorded', async () => {
    const { log, sender, settled } = scene([recorded]);
    const first = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    const second = await log.append({ draft: pass('U-2'), badge: 'op-1', at: AT });
    expect([first.deviceSeq, second.deviceSeq]).toEqual([1, 2]);
    expect(first.device).toBe(second.device);
    await sender.run();
    expect(settled).toEqual([
      [first.id, null],
      [second.id, null],
    ]);
    expect(await log.entries()).toEqual([]);
  });

  it('sends the same ids again until there is an answer', async () => {
    const silent = (): Posted => ({ kind: 'unreachable' });
    const { log, sender, posted, states } = scene([silent, silent, recorded]);
    const { id } = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    await sender.run();
    expect(posted).toEqual([[id], [id], [id]]);
    expect(states).toContain('retrying');
    expect(states.at(-1)).toBe('idle');
  });

  it('keeps a refused event until somebody has read why', async () => {
    const { log, sender } = scene([
      (events) => ({
        kind: 'answered',
        results: events.map(({ id }) => ({
          id,
          outcome: 'refused',
          refusal: { code: 'on_hold', also: [{ code: 'slot_empty' }] },
        })),
      }),
    ]);
    const { id } = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    await sender.run();
    const [entry] = await log.entries();
    expect(entry?.reasons?.map((reason) => reason.code)).toEqual(['on_hold', 'slot_empty']);
    await log.forget(id);
    expect(await log.entries()).toEqual([]);
  });

  it('leaves the entries of other people for their own session', async () => {
    const { log, sender, posted } = scene([recorded]);
    await log.append({ draft: pass('U-1'), badge: 'op-2', at: AT });
    await sender.run();
    expect(posted).toEqual([]);
    expect(await log.entries()).toHaveLength(1);
  });

  it('stops without a session and loses nothing', async () => {
    const { log, sender, states } = scene([() => ({ kind: 'signed_out' })]);
    await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    await sender.run();
    expect(states.at(-1)).toBe('signed_out');
    expect(await log.entries()).toHaveLength(1);
  });

  it('keeps an event from the future, and the number it has', async () => {
    const future = (events: readonly WireEvent[]): Posted => ({
      kind: 'answered',
      results: events.map(({ id }) => ({ id, outcome: 'refused', refusal: { code: 'time_in_future' } })),
    });
    const { log, sender, states, settled } = scene([future, recorded]);
    const { id } = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    await sender.run();
    expect(states).toContain('clock_ahead');
    expect(settled).toEqual([[id, null]]);
  });

  it('waits longer and longer, never over fifteen seconds, and not all tablets at once', () => {
    expect(pauseMs(0, 0)).toBe(200);
    expect(pauseMs(0, 1)).toBe(400);
    expect(pauseMs(3, 1)).toBe(3200);
    expect(pauseMs(30, 1)).toBe(15_000);
  });
});

describe('the device log', () => {
  it('spends no number on what is no event', async () => {
    const log = memoryDeviceLog();
    await expect(log.append({ draft: pass(' U-1 '), badge: 'op-1', at: AT })).rejects.toThrow();
    expect((await log.state()).nextSeq).toBe(1);
  });

  it('remembers the go whose result it made last', async () => {
    const log = memoryDeviceLog();
    const draft = { ...pass('U-1'), body: { unit: 'U-1', result: 'pass', startedAt: AT } } as const;
    await log.append({ draft, badge: 'op-1', at: AT });
    await log.append({
      draft: { type: 'unit.signed', body: { unit: 'U-1', meaning: 'm' } },
      badge: 'op-1',
      at: AT,
    });
    expect((await log.state()).lastStartedAt).toBe(AT);
  });
});
