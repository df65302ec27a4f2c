import { expect, it } from 'vitest';
import { HOLD_CALL_MAX, holdUnits, newHoldBatch } from '@/lib/server/hold-units';
import { readScan } from '@/lib/server/read-scan';
import { readUnitRecord } from '@/lib/server/read-unit-record';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

freshDatabase();

const QA = { kind: 'person', badge: 'qa-desk', role: 'qa' } as const;

it('units of an answer are held once each, also when the same is sent again', async () => {
  const { start, mustSend } = await openFloor();
  await mustSend(start('W1'), start('W2'));
  const request = { batch: newHoldBatch(), units: ['W1', 'W2', 'WX-none'], reason: 'cracked reel' };
  for (let time = 0; time < 2; time += 1) {
    const answer = await holdUnits(QA, request);
    expect(answer).toMatchObject({
      ok: true,
      refused: [{ unit: 'WX-none', refusal: { code: 'unknown_unit' } }],
    });
  }
  for (const unit of ['W1', 'W2'])
    expect((await readUnitRecord(unit))?.holds.map(({ reason }) => reason)).toEqual(['cracked reel']);
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
  expect(await holdUnits(operator, { batch, units: ['W1'], reason: 'x' })).toMatchObject({
    refused: [{ unit: 'W1', refusal: { code: 'not_permitted' } }],
  });
});

it('a unit with something on hold in it says so where it is signed and packed', async () => {
  const { through, mustSend, say, lot, place } = await openFloor();
  await mustSend(...through('WH1'), say.held('lot', lot));
  expect((await readScan('WH1', undefined)).unit?.heldInside).toEqual([
    { kind: 'lot', id: lot, reason: 'cracks' },
  ]);
  expect((await readScan('WH1', place)).unit?.heldInside).toEqual([]);
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
