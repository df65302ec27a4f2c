import { describe, expect, it } from 'vitest';
import { rebuild } from '@/lib/data/rebuild';
import { database } from '@/lib/server/database';
import { readExceptionCount, readExceptions } from '@/lib/server/read-exceptions';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { type Floor, openFloor } from '@/tests/support/gate-floor';
import { readReplicaAnswer } from '@/tests/support/replica-answer';

const record = { gate: 'record' } as const;

/** Runs a scene on a database of its own; whatever it did, a rebuild makes the same tables. */
async function onFloor(run: (floor: Floor) => Promise<void>): Promise<void> {
  const fresh = await openFreshDatabase();
  try {
    await run(await openFloor());
    const before = await dumpReadTables(database().pool);
    expect(before.flagged?.length).toBeGreaterThan(0);
    await rebuild(fresh.ownerUrl, () => undefined);
    expect(await dumpReadTables(database().pool)).toEqual(before);
  } finally {
    await closeDatabase();
    await fresh.drop();
  }
}

describe('an exception', () => {
  it('is listed with its facts, and its clearing ends the hold that it caused, once', () =>
    onFloor(async ({ check, mustSend, send, start, say, test, print }) => {
      await mustSend(start('W1'));
      const wrong = say.passed('W1', test, {
        ...record,
        device: 'tab-1',
        deviceSeq: 1,
        operator: 'op-test-1',
      });
      await send(wrong);
      expect(await check('W1', print)).toEqual(['on_hold']);
      const { total, open } = await readExceptions();
      expect(total).toBe(1);
      expect(open).toEqual([
        expect.objectContaining({
          event: wrong.id,
          type: 'unit.processed',
          unit: 'W1',
          station: test,
          operator: 'op-test-1',
          device: 'tab-1',
          flags: [expect.objectContaining({ code: 'wrong_step' })],
          cleared: null,
        }),
      ]);
      const clearing = say.exceptionCleared(wrong.id);
      expect(await send(clearing)).toEqual(['recorded']);
      expect(await check('W1', print)).toEqual([]);
      expect(await readExceptionCount()).toBe(0);
      expect((await readExceptions()).cleared.map(({ cleared }) => cleared?.reason)).toEqual([
        clearing.type === 'exception.cleared' ? clearing.body.reason : '',
      ]);
      expect(await send(clearing)).toEqual(['already_recorded']);
      expect(await send(say.exceptionCleared(wrong.id))).toEqual(['refused exception_already_cleared']);
    }));

  it('is open again, and its unit held, when the clearing is voided', () =>
    onFloor(async ({ check, mustSend, send, start, say, test, print, place }) => {
      await mustSend(start('W1'));
      const wrong = say.passed('W1', test, record);
      const clearing = say.exceptionCleared(wrong.id);
      await send(wrong, clearing);
      const { cursor } = await readReplicaAnswer(place);
      expect(await readExceptionCount()).toBe(0);
      await mustSend(say.voided(clearing.id));
      expect(await readExceptionCount()).toBe(1);
      expect(await check('W1', print)).toEqual(['on_hold']);
      const after = await readReplicaAnswer(place, cursor);
      expect(after.units.map(({ unit, holds }) => [unit, holds.length])).toEqual([['W1', 1]]);
      await mustSend(say.exceptionCleared(wrong.id));
      expect(await check('W1', print)).toEqual([]);
    }));

  it('does not take away what else holds the unit: a hold of QA, attempts that are used up', () =>
    onFloor(async ({ check, mustSend, send, start, say, test, print }) => {
      await mustSend(start('W1'), start('W2'), say.held('unit', 'W1'));
      const wrong = say.passed('W1', test, record);
      const fails = [1, 2].map(() => say.failed('W2', test, record));
      await send(wrong, ...fails);
      for (const { id } of [wrong, ...fails]) await mustSend(say.exceptionCleared(id));
      expect(await readExceptionCount()).toBe(0);
      expect(await check('W1', print)).toContain('on_hold');
      expect(await check('W2', print)).toContain('on_hold');
    }));

  it('is open again when something else is found wrong after it was cleared', () =>
    onFloor(async ({ check, mustSend, send, start, say, test, print, place }) => {
      const started = start('W1');
      const printed = say.passed('W1', print);
      await mustSend(started, printed);
      const wrong = say.passed('W1', test, record);
      await send(wrong);
      await mustSend(say.exceptionCleared(wrong.id));
      expect(await check('W1', place)).toEqual([]);
      await mustSend(say.voided(printed.id));
      expect(await readExceptionCount()).toBe(1);
      expect(await check('W1', print)).toEqual(['on_hold']);
    }));

  it('is nothing but an event that broke a rule, for as long as it is broken', () =>
    onFloor(async ({ mustSend, send, start, say, test, print, place }) => {
      const started = start('W1');
      await mustSend(started);
      const late = say.passed('W1', print, { ...record, at: say.minute(40) });
      const wrong = say.passed('W1', place, { ...record, at: say.minute(50) });
      expect(await send(wrong)).toEqual(['recorded wrong_step']);
      await send(late, say.passed('W1', test, { ...record, at: say.minute(10) }));
      expect((await readExceptions()).open.map(({ event }) => event)).not.toContain(wrong.id);
      for (const id of [wrong.id, started.id])
        expect(await send(say.exceptionCleared(id))).toEqual(['refused unknown_exception']);
    }));
});
