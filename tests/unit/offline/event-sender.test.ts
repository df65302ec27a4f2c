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
function scene(answers: ((events: readonly WireEvent[]) => Posted)[], own = new Set<string>()) {
  const retold: [string, string][] = [];
  const log = memoryDeviceLog();
  const posted: string[][] = [];
  const states: SenderState[] = [];
  const settled: [string, Refusal[] | null][] = [];
  const sender = new EventSender({
    log,
    async post(events) {
      posted.push(events.map((event) => event.id));
      const answer = answers[Math.min(posted.length, answers.length) - 1];
      if (answer === undefined) throw new Error('no answer');
      return answer(events);
    },
    onState: (state) => states.push(state),
    onSettled: (id, reasons) => settled.push([id, reasons]),
    onRetold: (id, newId) => retold.push([id, newId]),
    isOwn: (id) => own.has(id),
    alone: (work) => work(),
    pause: async () => undefined,
    random: () => 0.5,
  });
  return { log, sender, posted, states, settled, retold };
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

  const refusedOnHold = (events: readonly WireEvent[]): Posted => ({
    kind: 'answered',
    results: events.map(({ id }) => ({
      id,
      outcome: 'refused',
      refusal: { code: 'on_hold', also: [{ code: 'slot_empty' }] },
    })),
  });

  it('keeps a refused event until somebody has read why', async () => {
    const own = new Set<string>();
    const { log, sender } = scene([refusedOnHold], own);
    const { id } = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    own.add(id);
    await sender.run();
    const [entry] = await log.entries();
    expect(entry?.reasons?.map((reason) => reason.code)).toEqual(['on_hold', 'slot_empty']);
    await log.forget(id);
    expect(await log.entries()).toEqual([]);
  });

  it('tells a fact again, to be flagged, when the operator had gone on before it was refused', async () => {
    const own = new Set<string>();
    const { log, sender, settled, retold } = scene(
      [() => ({ kind: 'unreachable' }), refusedOnHold, recorded],
      own,
    );
    const { id } = await log.append({ draft: pass('U-1'), badge: 'op-1', at: AT });
    own.add(id);
    await sender.run();
    const newId = retold[0]?.[1] ?? '';
    expect(retold).toEqual([[id, newId]]);
    expect(settled).toEqual([[newId, null]]);
    expect(await log.state()).toMatchObject({ nextSeq: 3 });
  });

  it('delivers what everyone at the device has done, whoever is signed in', async () => {
    const { log, sender, settled } = scene([recorded]);
    const one = await log.append({ draft: pass('U-1'), badge: 'op-2', at: AT });
    const two = await log.append({ draft: pass('U-2'), badge: 'op-1', at: AT });
    expect([one.operator, two.operator]).toEqual(['op-2', 'op-1']);
    await sender.run();
    expect(settled.map(([id]) => id)).toEqual([one.id, two.id]);
  });

  it('takes a new name when another device has used its numbers, and loses nothing', async () => {
    const reused = (events: readonly WireEvent[]): Posted => ({
      kind: 'answered',
      results: events.map(({ id }, index) =>
        index === 0
          ? { id, outcome: 'already_recorded' }
          : { id, outcome: 'refused', refusal: { code: 'device_seq_reused' } },
      ),
    });
    const sent: WireEvent[][] = [];
    const { log, sender, settled } = scene([
      reused,
      (events) => {
        sent.push([...events]);
        return recorded(events);
      },
    ]);
    const made: WireEvent[] = [];
    for (const unit of ['U-1', 'U-2', 'U-3'])
      made.push(await log.append({ draft: pass(unit), badge: 'op-1', at: AT }));
    const before = (await log.state()).device;
    await sender.run();
    expect(settled.map(([id]) => id)).toEqual(made.map(({ id }) => id));
    expect(sent[0]?.map(({ id, deviceSeq }) => [id, deviceSeq])).toEqual([
      [made[1]?.id, 1],
      [made[2]?.id, 2],
    ]);
    expect(sent[0]?.every(({ device }) => device !== before)).toBe(true);
    expect((await log.state()).nextSeq).toBe(3);
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
