import { describe, expect, it } from 'vitest';
import { differenceQuestionSchema, whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { answerSince } from '@/lib/server/answer-since';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { eventMaker } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { momentAfterAll } from '@/tests/support/moment-after-all';
import { recordHistory } from '@/tests/support/record-history';

freshDatabase();

const STATION = 'MD-PLACE';
const RECORD = { gate: 'record' } as const;
const say = eventMaker('2026-03-09T06:00:00Z');
const at = (minute: number) => ({ at: new Date(Date.UTC(2026, 2, 9, 8, minute)).toISOString(), ...RECORD });

const plant = {
  parts: [{ number: 'C-1U', attrition: 0.01 }],
  stations: [
    {
      code: STATION,
      operation: 'place',
      slots: [{ name: '1-01', holds: 'reel' }],
      scannedBy: ['tab-m'],
    },
  ],
  products: [
    {
      number: 'MD',
      revision: 'A',
      route: [{ step: 10, operation: 'place' }],
      bom: [{ part: 'C-1U', positions: ['C1', 'C2', 'C3', 'C4', 'C5'], station: STATION, slot: '1-01' }],
    },
  ],
};

const answerOf = async (item: string, knownAt?: string) => {
  const { asOf: _, ...answer } = await whereUsed(
    whereUsedQuestionSchema.parse({ item, ...(knownAt === undefined ? {} : { knownAt }) }),
  );
  return answer;
};
const differenceOf = async (item: string, since: string) => {
  const compared = await answerSince(differenceQuestionSchema.parse({ item, since }));
  if (!compared.ok) throw new Error('There are few units.');
  return compared.difference;
};

describe('an answer as it was known then has the doubts of then', () => {
  const unit = (number: number) => `MD-${String(number).padStart(2, '0')}`;
  const count = say.make('item.counted', { item: 'RM-1', quantity: 80, method: 'x-ray' }, at(50));

  it('by counts: the count is what made the units before a change only possible', async () => {
    expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
    const numbers = Array.from({ length: 20 }, (_, index) => index);
    await recordHistory([
      ...['RM-1', 'RM-2'].map((item) =>
        say.received({ item, kind: 'reel', part: 'C-1U', quantity: 100 }, at(0)),
      ),
      ...numbers.map((each) => say.started({ unit: unit(each), product: 'MD', revision: 'A' }, at(1))),
      say.mounted('RM-1', STATION, '1-01', at(2)),
      ...numbers.slice(0, 10).map((each) => say.passed(unit(each), STATION, at(3 + each))),
      say.mounted('RM-2', STATION, '1-01', at(20)),
      ...numbers.slice(10).map((each) => say.passed(unit(each), STATION, at(20 + each))),
    ]);
    const before = { first: await answerOf('RM-1'), second: await answerOf('RM-2') };
    const since = await momentAfterAll();
    // 50 pieces are recorded on it, and 20 are gone: some 30 came from another one, or a few more where some were lost.
    await recordHistory([count]);

    expect(await answerOf('RM-1', since)).toEqual(before.first);
    expect(await answerOf('RM-2', since)).toEqual(before.second);
    const { leavesOut, changes, events } = await differenceOf('RM-2', since);
    expect(leavesOut).toBe(false);
    expect(changes.map((change) => [change.unit, change.kind, change.by])).toEqual(
      [3, 4, 5, 6, 7, 8, 9].map((each) => [unit(each), 'joined', { event: count.id }]),
    );
    expect(events).toMatchObject([{ event: { id: count.id }, isRefused: false, changesOwing: false }]);
    const draws = async (knownAt?: string) =>
      (await asBuilt(unit(9), undefined, knownAt))?.draws.map(({ item, because = [] }) => [item, ...because]);
    expect(await draws(since)).toEqual([['RM-1']]);
    expect(await draws()).toEqual([
      ['RM-1', 'balance'],
      ['RM-2', 'balance'],
    ]);
    const now = await momentAfterAll();
    for (const item of ['RM-1', 'RM-2']) expect(await answerOf(item, now)).toEqual(await answerOf(item));
  });

  it('by what a device owed: a gap opens and closes, also with an event that is refused', async () => {
    const fromTablet = (deviceSeq: number, minute: number) => ({ ...at(minute), device: 'tab-m', deviceSeq });
    const started = say.started({ unit: 'MD-40', product: 'MD', revision: 'A' }, at(51));
    await recordHistory([
      started,
      say.mounted('RM-3', STATION, '1-01', fromTablet(1, 52)),
      say.mounted('RM-4', STATION, '1-01', fromTablet(2, 56)),
      say.passed('MD-40', STATION, at(54)),
    ]);
    const whole = await momentAfterAll();
    const opening = say.mounted('RM-5', STATION, '1-01', fromTablet(4, 58));
    await recordHistory([opening, say.started({ unit: 'MD-41', product: 'MD', revision: 'A' }, at(51))]);
    await recordHistory([say.passed('MD-41', STATION, at(57))]);
    const owing = await momentAfterAll();
    // A unit that nobody knows is refused, and its number has arrived all the same.
    const refused = say.passed('MD-99', STATION, { ...fromTablet(3, 57), gate: 'enforce' });
    expect(await recordHistory([refused])).toMatchObject([{ outcome: 'refused' }]);

    expect((await answerOf('RM-4', whole)).complete).toBe(true);
    expect(await answerOf('RM-5', owing)).toMatchObject({
      complete: false,
      owing: [{ device: 'tab-m', missing: [[3, 3]] }],
      units: [{ unit: 'MD-41', because: ['gap'] }],
    });
    expect(await answerOf('RM-5')).toMatchObject({ complete: true, units: [] });

    const since = await differenceOf('RM-5', owing);
    expect(since.changes).toMatchObject([{ unit: 'MD-41', kind: 'left', by: { event: refused.id } }]);
    expect(since.events).toMatchObject([{ isRefused: true, changesOwing: true }]);
    const opened = await answerSince(
      differenceQuestionSchema.parse({ item: 'RM-4', since: whole, until: owing }),
    );
    expect(opened).toMatchObject({ ok: true, difference: { changes: [{ unit: 'MD-41', kind: 'joined' }] } });
    const now = await momentAfterAll();
    for (const item of ['RM-4', 'RM-5']) expect(await answerOf(item, now)).toEqual(await answerOf(item));
  });

  it('by any event of a device that scans there, whatever it tells', async () => {
    const label = say.labelled('unit', 'MD-42', { ...at(59), device: 'tab-m', deviceSeq: 6 });
    await recordHistory([
      say.started({ unit: 'MD-42', product: 'MD', revision: 'A' }, at(51)),
      say.passed('MD-42', STATION, {
        at: new Date(Date.UTC(2026, 2, 9, 8, 58, 30)).toISOString(),
        ...RECORD,
      }),
    ]);
    const whole = await momentAfterAll();
    await recordHistory([label]);
    const owing = await momentAfterAll();
    await recordHistory([say.voided(label.id, at(60))]);

    const opened = await differenceOf('RM-4', whole);
    expect(opened.changes).toMatchObject([{ unit: 'MD-42', kind: 'joined', by: { event: label.id } }]);
    expect(opened.events).toMatchObject([{ isRefused: false, changesOwing: true }]);
    // Voided or not, its number has arrived.
    expect((await differenceOf('RM-4', owing)).changes).toEqual([]);
    expect(await answerOf('RM-4', owing)).toEqual(await answerOf('RM-4'));
  });
});
