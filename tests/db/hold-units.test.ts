import { expect, it } from 'vitest';
import { HOLD_CALL_MAX, holdIdInBatch } from '@/lib/domain/holds/hold-batch';
import { holdUnits, newHoldBatch } from '@/lib/server/hold-units';
import { readScan } from '@/lib/server/read-scan';
import { readUnitRecord } from '@/lib/server/read-unit-record';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

freshDatabase();

const QA = { kind: 'person', badge: 'qa-desk', role: 'qa' } as const;

/** Id and reason of every hold of a unit, as a set. */
async function holdsOf(unit: string) {
  return new Set((await readUnitRecord(unit))?.holds.map(({ hold, reason }) => `${hold} ${reason}`));
}

it('units of an answer are held once each, also when the same is sent again', async () => {
  const { start, mustSend } = await openFloor();
  await mustSend(start('W1'), start('W2'));
  const request = { batch: newHoldBatch(), units: ['W1', 'W2', 'WX-none'], reason: 'cracked reel' };
  for (let time = 0; time < 2; time += 1) {
    const answer = await holdUnits(QA, request);
    expect(answer).toMatchObject({
      ok: true,
      already: 0,
      refused: [{ unit: 'WX-none', refusals: [{ code: 'unknown_unit' }] }],
    });
  }
  for (const unit of ['W1', 'W2'])
    expect(await holdsOf(unit)).toEqual(new Set([`${holdIdInBatch(request.batch, unit)} cracked reel`]));
});

it('a later batch leaves out what an open hold of the same reason stops, and only that', async () => {
  const { start, mustSend, say } = await openFloor();
  await mustSend(start('WL1'), start('WL2'), start('WL3'));
  const [first, other, again, later] = [newHoldBatch(), newHoldBatch(), newHoldBatch(), newHoldBatch()];
  const hold = (batch: string, units: string[], reason = 'cracked reel') =>
    holdUnits(QA, { batch, units, reason });
  expect(await hold(first, ['WL1'])).toEqual({ ok: true, already: 0, refused: [] });
  expect(await hold(again, ['WL1', 'WL2', 'WL2'])).toEqual({ ok: true, already: 1, refused: [] });
  expect(await hold(other, ['WL2'], 'wrong profile')).toEqual({ ok: true, already: 0, refused: [] });
  const firstHold = holdIdInBatch(first, 'WL1');
  await mustSend(
    say.make('hold.released', { hold: firstHold, disposition: 'use as is', reason: 'inspected' }, {}),
  );
  expect(await hold(later, ['WL1', 'WL2', 'WL3'])).toEqual({ ok: true, already: 1, refused: [] });
  expect(await holdsOf('WL1')).toEqual(
    new Set([`${firstHold} cracked reel`, `${holdIdInBatch(later, 'WL1')} cracked reel`]),
  );
  expect(await holdsOf('WL2')).toEqual(
    new Set([`${holdIdInBatch(other, 'WL2')} wrong profile`, `${holdIdInBatch(again, 'WL2')} cracked reel`]),
  );
  expect(await holdsOf('WL3')).toEqual(new Set([`${holdIdInBatch(later, 'WL3')} cracked reel`]));
});

it('a hold that goes by itself does not stand in for a decision of the same words', async () => {
  const { start, mustSend, send, place, say } = await openFloor();
  await mustSend(start('WG1'));
  await send(say.passed('WG1', place, { gate: 'record' }));
  const [automatic] = (await readUnitRecord('WG1'))?.holds ?? [];
  expect(automatic).toMatchObject({ automatic: true });
  const request = { batch: newHoldBatch(), units: ['WG1'], reason: automatic?.reason ?? '' };
  expect(await holdUnits(QA, request)).toEqual({ ok: true, already: 0, refused: [] });
  expect(await holdsOf('WG1')).toContain(`${holdIdInBatch(request.batch, 'WG1')} ${request.reason}`);
});

it('a request that is too long, or means nothing, holds nothing', async () => {
  const units = Array.from({ length: HOLD_CALL_MAX + 1 }, (_, index) => `W${index}`);
  const batch = newHoldBatch();
  for (const request of [
    { batch, units, reason: 'x' },
    { batch, units: [], reason: 'x' },
    { batch: 'no', units: ['W1'], reason: 'x' },
    { batch, units: ['W1'], reason: ' ' },
    null,
  ])
    expect(await holdUnits(QA, request)).toEqual({ ok: false });
  const operator = { kind: 'person', badge: 'op-x', role: 'operator' } as const;
  expect(await holdUnits(operator, { batch, units: ['W4'], reason: 'x' })).toMatchObject({
    refused: [{ unit: 'W4', refusals: [{ code: 'not_permitted' }] }],
  });
});

it('a unit with something on hold in it says so on its page and off the route: at sign-off, packing and returns', async () => {
  const { through, mustSend, say, lot, place } = await openFloor();
  await mustSend(...through('WH1'), say.held('lot', lot));
  const held = [{ what: 'held_inside', kind: 'lot', id: lot, reason: 'cracks' }];
  expect((await readScan('WH1', undefined)).unit?.cautions).toEqual(held);
  expect((await readUnitRecord('WH1'))?.cautions).toEqual(held);
  expect((await readScan('WH1', place)).unit?.cautions).toEqual([]);
});

it("a unit's history has what happened to its containers while it was inside", async () => {
  const { through, mustSend, say } = await openFloor();
  await mustSend(...through('WM1'), ...through('WM2'), say.signed('WM1'), say.signed('WM2'));
  await mustSend(
    say.packed('WM2', 'CT-1'),
    say.nested('CT-1', 'PAL-0'),
    say.unnested('CT-1', 'PAL-0'),
    say.packed('WM1', 'CT-1'),
    say.nested('CT-1', 'PAL-1'),
    say.shipped('PAL-1'),
    say.returned('WM1'),
  );
  const typesOf = async (unit: string) =>
    (await readUnitRecord(unit))?.history.map(({ event }) => event.type).slice(-6);
  expect(await typesOf('WM1')).toEqual([
    'unit.processed',
    'unit.signed',
    'unit.packed',
    'container.nested',
    'container.shipped',
    'unit.returned',
  ]);
  expect((await typesOf('WM2'))?.slice(-5)).toEqual([
    'unit.packed',
    'container.nested',
    'container.unnested',
    'container.nested',
    'container.shipped',
  ]);
  expect((await readUnitRecord('WM1'))?.signOff).toBeNull();
  expect((await readUnitRecord('WM2'))?.signOff).toMatchObject({ before: null, since: [] });
});
