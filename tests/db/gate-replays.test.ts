import { describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import type { Principal } from '@/lib/domain/people/principal';
import { appendEvents } from '@/lib/server/append-events';
import { database } from '@/lib/server/database';
import { whereUsed } from '@/lib/server/where-used';
import { freshDatabase } from '@/tests/support/fresh-database';
import { keptOf, openFloor } from '@/tests/support/gate-floor';

freshDatabase();

const OPERATOR: Principal = { kind: 'person', badge: 'op-1', role: 'operator' };
const ADMIN: Principal = { kind: 'person', badge: 'boss', role: 'admin' };

async function outcomesOf(events: readonly unknown[], principal: Principal): Promise<string[]> {
  const results = await appendEvents(events, principal);
  return results.map(({ outcome, refusal }) => (refusal ? `${outcome} ${refusal.code}` : outcome));
}

describe('a retry', () => {
  it('is answered before any rule, so its own effect does not refuse it', async () => {
    const { mustSend, send, finished, say, start } = await openFloor();
    const done = finished('W1');
    const final = [say.packed('W1', 'CT-1'), say.shipped('CT-1')];
    await mustSend(...done, ...final);
    expect(await send(...done, ...final)).toEqual([...done, ...final].map(() => 'already_recorded'));
    expect(await send(start('W1'))).toEqual(['refused already_started']);
    for (const { id } of final) expect(await keptOf(id)).toEqual({ recorded: 1, refusals: [] });
  });

  it('in the same request is one too', async () => {
    const { send, start } = await openFloor();
    const event = start('W2');
    expect(await send(event, event, event)).toEqual(['recorded', 'already_recorded', 'already_recorded']);
  });

  it('says the same in other words: key order, defaults, offset and letters of its id', async () => {
    const { mustSend, send, start } = await openFloor();
    const event = start('W3');
    await mustSend(event);
    const { body, at, ...envelope } = event;
    const turned = Object.fromEntries(Object.entries(body).reverse());
    const elsewhere = `${new Date(Date.parse(at) + 3_600_000).toISOString().slice(0, -1)}+01:00`;
    expect(
      await send(
        { body: turned, at, ...envelope },
        { ...event, gate: 'enforce', uncertaintyMs: 0 },
        { ...event, at: elsewhere },
        { ...event, id: event.id.toUpperCase() },
      ),
    ).toEqual(Array(4).fill('already_recorded'));
  });

  it('with other content is refused, and both are kept', async () => {
    const { mustSend, send, start } = await openFloor();
    const event = start('W4');
    await mustSend(event);
    const changes = [
      { body: { ...event.body, order: 'O-1' } },
      { at: '2026-03-02T05:59:59Z' },
      { uncertaintyMs: 1 },
      { operator: 'op' },
      { gate: 'record' as const },
      { device: 'tab', deviceSeq: 1 },
    ];
    const answers = await send(...changes.map((change) => ({ ...event, ...change })));
    expect(answers).toEqual(changes.map(() => 'refused event_id_reused'));
    expect(await keptOf(event.id)).toEqual({
      recorded: 1,
      refusals: changes.map(() => 'event_id_reused'),
    });
  });

  it('of a refused event is judged anew', async () => {
    const { mustSend, send, start, say, print } = await openFloor();
    const early = say.passed('W5', print);
    expect(await send(early)).toEqual(['refused unknown_unit']);
    await mustSend({ ...start('W5'), at: say.minute(0) });
    expect(await send(early, early)).toEqual(['recorded', 'already_recorded']);
    expect(await keptOf(early.id)).toEqual({ recorded: 1, refusals: ['unknown_unit'] });
  });

  it('by somebody who may not send it is answered as a retry', async () => {
    const { say, mustSend, start, print } = await openFloor();
    await mustSend(start('W6'));
    const [scrapped, signed] = [say.scrapped('W6'), say.signed('W6')];
    expect(await outcomesOf([scrapped], ADMIN)).toEqual(['recorded']);
    expect(await outcomesOf([scrapped, signed], OPERATOR)).toEqual([
      'already_recorded',
      'refused not_permitted',
    ]);
    expect(await outcomesOf([{ ...scrapped, station: print }], OPERATOR)).toEqual([
      'refused event_id_reused',
    ]);
    expect(await keptOf(signed.id)).toEqual({ recorded: 0, refusals: ['not_permitted'] });
  });
});

describe('one bad event', () => {
  it('never harms its neighbours', async () => {
    const { send, start, say, print, place } = await openFloor();
    const good = [start('W10'), say.passed('W10', print), say.passed('W10', place)];
    const bad = [
      null,
      'event',
      [],
      { ...good[1], type: 'unit.exploded' },
      { ...good[1], id: 'one' },
      { ...good[1], body: { unit: ' W10' } },
      { ...good[1], at: '2026-03-02T08:00:00' },
      say.passed('W-none', print),
      { ...say.signed('W10'), at: '2199-01-01T00:00:00Z' },
    ];
    const answers = await send(good[0], ...bad, good[1], ...bad, good[2]);
    expect([answers[0], answers[bad.length + 1], answers.at(-1)]).toEqual(Array(3).fill('recorded'));
    const refused = answers.filter((answer) => answer !== 'recorded').map((answer) => answer.split(' ')[1]);
    expect(refused.slice(0, 9)).toEqual([...Array(7).fill('malformed'), 'unknown_unit', 'time_in_future']);
  });

  it('is named by its id and its place in the request', async () => {
    const { start } = await openFloor();
    const event = start('W11');
    const results = await appendEvents([{ ...event, body: { unit: '' } }, { id: 7 }], { kind: 'token' });
    expect(results).toMatchObject([
      { id: event.id, outcome: 'refused', refusal: { code: 'malformed' } },
      { id: null, outcome: 'refused', refusal: { code: 'malformed' } },
    ]);
    const errors = results[0]?.refusal?.errors;
    expect(errors).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ pointer: '/events/0/body/unit', code: 'empty' }),
        expect.objectContaining({ pointer: '/events/0/body/product' }),
      ]),
    );
  });

  it('is kept for audit with its content, its reasons and who sent it', async () => {
    const { start, say, print } = await openFloor();
    const event = say.passed('W-none', print, { operator: 'nobody' });
    await outcomesOf([start('W12'), event], OPERATOR);
    const { rows } = await database().pool.query('select * from log.refusal where event = $1', [event.id]);
    expect(rows).toMatchObject([
      {
        code: 'unknown_operator',
        refusal: [{ code: 'unknown_operator' }, { code: 'unknown_unit' }],
        content: event,
        refused_by: 'op-1',
      },
    ]);
  });

  it('of the future is refused from five minutes on', async () => {
    const { start } = await openFloor();
    const ahead = (seconds: number) => new Date(Date.now() + seconds * 1000).toISOString();
    const event = (unit: string, at: string) => ({ ...start(unit), at });
    expect(await outcomesOf([event('W13', ahead(290)), event('W14', ahead(310))], { kind: 'token' })).toEqual(
      ['recorded', 'refused time_in_future'],
    );
  });
});

describe('what a device owes', () => {
  async function owing(device: string) {
    const { complete, owing: all } = await whereUsed(whereUsedQuestionSchema.parse({ item: 'any' }));
    expect(complete).toBe(all.length === 0);
    return all.find((each) => each.device === device)?.missing ?? [];
  }

  it('are the gaps up to the highest number that came, whatever became of it', async () => {
    const { send, mustSend, start, say, print } = await openFloor();
    const from = (deviceSeq: number) => ({ device: 'tab-1', deviceSeq });
    expect(await owing('tab-1')).toEqual([]);
    await mustSend({ ...start('W20'), ...from(3) });
    expect(await owing('tab-1')).toEqual([[1, 2]]);
    expect(await send(say.passed('W-none', print, from(2)))).toEqual(['refused unknown_unit']);
    expect(await owing('tab-1')).toEqual([[1, 1]]);
    await mustSend(say.passed('W20', print, from(9)));
    expect(await owing('tab-1')).toEqual([
      [1, 1],
      [4, 8],
    ]);
    await mustSend(
      ...[1, 4, 5, 6, 7, 8].map((seq) => say.removed('W20', 'C1', { ...from(seq), gate: 'record' })),
    );
    expect(await owing('tab-1')).toEqual([]);
  });

  it('includes what came with a time in the future, and what was malformed, until it comes right', async () => {
    const { send, mustSend, start } = await openFloor();
    const from = (deviceSeq: number) => ({ device: 'tab-2', deviceSeq });
    await mustSend({ ...start('W21'), ...from(1) }, { ...start('W22'), ...from(4) });
    expect(
      await send(
        { ...start('W23'), ...from(2), at: '2199-01-01T00:00:00Z' },
        { ...start('W24'), body: { unit: ' W24' }, ...from(3) },
      ),
    ).toEqual(['refused time_in_future', 'refused malformed']);
    expect(await owing('tab-2')).toEqual([[2, 3]]);
    await mustSend({ ...start('W23'), ...from(2) }, { ...start('W24'), ...from(3) });
    expect(await owing('tab-2')).toEqual([]);
  });

  it('is nothing for events that their sender may not send: they came', async () => {
    const { say, mustSend, start } = await openFloor();
    const from = (deviceSeq: number) => ({ device: 'tab-3', deviceSeq });
    await mustSend(start('W25'));
    expect(
      await outcomesOf([say.scrapped('W25', from(1)), say.removed('W25', 'C1', from(2))], OPERATOR),
    ).toEqual(['refused not_permitted', 'recorded']);
    expect(await owing('tab-3')).toEqual([]);
  });

  it('is not repeated by retries', async () => {
    const { send, mustSend, start } = await openFloor();
    const event = { ...start('W26'), device: 'tab-4', deviceSeq: 2 };
    await mustSend(event);
    expect(await send(event)).toEqual(['already_recorded']);
    expect(await owing('tab-4')).toEqual([[1, 1]]);
  });
});
