import { describe, expect, test } from 'vitest';
import { findUnitsDue } from '@/lib/data/replica/find-replica-units';
import type { ReplicaAnswer, ReplicaCursor } from '@/lib/domain/replica/replica-answer';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';
import { readReplicaAnswer } from '@/tests/support/replica-answer';

freshDatabase();

/** Reads changes again and again into a copy, as a tablet does. */
function tablet(station: string) {
  const units = new Map<string, ReplicaAnswer['units'][number]>();
  let cursor: ReplicaCursor | null = null;
  return {
    units,
    async refresh(): Promise<ReplicaAnswer> {
      const answer = await readReplicaAnswer(station, cursor);
      if (answer.isWhole) units.clear();
      for (const unit of answer.units) units.set(unit.unit, unit);
      cursor = answer.cursor;
      return answer;
    },
  };
}

describe('a replica', () => {
  test('begins whole, then takes what changed: states, holds placed, released and by judgement, voids, joinings', async () => {
    const { send, mustSend, start, say, print, place, name, codesOf } = {
      ...(await openFloor()),
      codesOf: (prefix: string) => (unit: string) => unit.startsWith(prefix),
    };
    const prefix = name('W-r');
    const unit = (suffix: string) => `${prefix}${suffix}`;
    await mustSend(start(unit('a')), start(unit('b')));
    const copy = tablet(place);
    const first = await copy.refresh();
    expect(first.isWhole).toBe(true);
    expect(first.plant?.stations?.some(({ code }) => code === place)).toBe(true);
    expect(first.items.map(({ slot }) => slot)).toEqual(['F1']);
    expect((await copy.refresh()).units).toEqual([]);

    const steps: (() => Promise<unknown>)[] = [
      () => mustSend(say.passed(unit('a'), print)),
      () => mustSend(say.held('unit', unit('b'))),
      () => send({ ...say.passed(unit('b'), place), gate: 'record' }),
      () => mustSend(say.scrapped(unit('b'))),
    ];
    for (const step of steps) {
      await step();
      const answer = await copy.refresh();
      expect(answer.isWhole).toBe(false);
      expect(answer.units.length).toBeGreaterThan(0);
      const whole = (await readReplicaAnswer(place)).units.filter((each) => codesOf(prefix)(each.unit));
      for (const each of whole) expect(copy.units.get(each.unit)).toEqual(each);
    }
    expect(copy.units.get(unit('b'))?.state.isScrapped).toBe(true);
    expect(copy.units.get(unit('b'))?.holds.length).toBeGreaterThanOrEqual(2);
  });

  test('keeps what is scrapped or packed too, behind what is due: without the server it is no unknown unit', async () => {
    const { send, mustSend, start, say, print, place, name } = await openFloor();
    const [due, fresh, scrapped, packed] = [name('W-due'), name('W-new'), name('W-burnt'), name('W-packed')];
    await mustSend(
      ...[due, fresh, scrapped, packed].map(start),
      say.passed(due, print),
      say.scrapped(scrapped),
    );
    await send(say.packed(packed, name('C'), { gate: 'record' }));
    const { units, station } = await readReplicaAnswer(place);
    const order = units.flatMap(({ unit }) => ([due, fresh, scrapped, packed].includes(unit) ? unit : []));
    expect(order).toEqual([due, packed, scrapped, fresh]);
    expect(units.find(({ unit }) => unit === scrapped)?.state.isScrapped).toBe(true);
    // Where a tablet has no room for all, those that are due stay.
    const one = await findUnitsDue(database().pool, station.station.operation, 1);
    expect(one.map((text) => JSON.parse(text))).toEqual([units[0]]);
  });

  test('takes what an event that is voided had done out again', async () => {
    const { mustSend, start, say, print, place, name } = await openFloor();
    const unit = name('W-v');
    const started = start(unit);
    const passed = say.passed(unit, print);
    await mustSend(started, passed);
    const copy = tablet(place);
    await copy.refresh();
    expect(copy.units.get(unit)?.state.steps['10']?.last).toBe('pass');
    await mustSend(say.make('event.voided', { event: passed.id, reason: 'mistake' }, {}));
    await copy.refresh();
    expect(copy.units.get(unit)?.state.steps['10']).toBeUndefined();
  });

  test('begins again after the plant has changed, and for a cursor of another record', async () => {
    const { mustSend, start, place, name } = await openFloor();
    await mustSend(start(name('W-p')));
    const { cursor } = await readReplicaAnswer(place);
    await putPlant({ parts: [{ number: name('NEW') }] }, 'test');
    expect((await readReplicaAnswer(place, cursor)).isWhole).toBe(true);
    const ahead = { ...(await readReplicaAnswer(place)).cursor, event: cursor.event + 1000 };
    expect((await readReplicaAnswer(place, ahead)).isWhole).toBe(true);
  });

  test('skips no event of any number of writers: a cursor never passes a position that is committed later', async () => {
    const { send, start, place, name } = await openFloor();
    const copy = tablet(place);
    await copy.refresh();
    const codes = Array.from({ length: 60 }, (_, index) => name(`W-c${index}-`));
    let isDone = false;
    const reading = (async () => {
      while (!isDone) await copy.refresh();
    })();
    await Promise.all(codes.map((code) => send(start(code))));
    isDone = true;
    await reading;
    await copy.refresh();
    expect(codes.filter((code) => !copy.units.has(code))).toEqual([]);
    const { rows } = await database().pool.query('select count(*)::integer as count from log.event');
    expect(rows[0].count).toBeGreaterThan(60);
  });

  test('tells when a unit was last heard of to the microsecond, and each unit once, over more than one page', async () => {
    const { mustSend, start, place, name } = await openFloor();
    const codes = Array.from({ length: 1100 }, (_, index) => name(`W-m${index}-`));
    await mustSend(...codes.map(start));
    const { units } = await readReplicaAnswer(place);
    const kept = units.map(({ unit }) => unit);
    expect(codes.filter((code) => !kept.includes(code))).toEqual([]);
    expect(new Set(kept).size).toBe(kept.length);
    const { rows } = await database().pool.query('select unit, last_at from read.unit');
    const lastAt = new Map(rows.map((row) => [row.unit, row.last_at]));
    expect(units.filter((unit) => unit.lastAtUs !== lastAt.get(unit.unit))).toEqual([]);
  });

  test('has the units that are due at the station before all others', async () => {
    const { mustSend, start, say, print, place, name } = await openFloor();
    const [due, early] = [name('W-d'), name('W-e')];
    await mustSend(start(due), say.passed(due, print), start(early));
    const { units } = await readReplicaAnswer(place);
    expect(units.findIndex(({ unit }) => unit === due)).toBeLessThan(
      units.findIndex(({ unit }) => unit === early),
    );
  });
});
