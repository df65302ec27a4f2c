import { describe, expect, it } from 'vitest';
import { rebuild } from '@/lib/data/rebuild';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { database } from '@/lib/server/database';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { type Floor, openFloor } from '@/tests/support/gate-floor';

const record = { gate: 'record' } as const;

/** Records what the events say, each in a request of its own, and compares the tables with those of a rebuild. */
async function expectSameAfterRebuild(make: (floor: Floor) => WireEvent[]): Promise<void> {
  const fresh = await openFreshDatabase();
  try {
    const floor = await openFloor();
    for (const event of make(floor)) expect(await floor.send(event)).not.toEqual(['refused malformed']);
    const before = await dumpReadTables(database().pool);
    expect(before.voided?.length).toBeGreaterThan(0);
    await rebuild(fresh.ownerUrl, () => undefined);
    expect(await dumpReadTables(database().pool)).toEqual(before);
  } finally {
    await closeDatabase();
    await fresh.drop();
  }
}

/** Events that are all there is about what they name. */
const LONELY: Record<string, (floor: Floor) => WireEvent> = {
  'a start': ({ start }) => start('W1'),
  'a result': ({ say, place }) => say.passed('W1', place, record),
  'a packing': ({ say }) => say.packed('W1', 'CT1', record),
  'a nesting': ({ say }) => say.nested('CT1', 'PL1', record),
  'a shipment': ({ say }) => say.shipped('CT1', record),
  'a joining': ({ say }) => say.joined('W1', 'W2', record),
  'a receipt': ({ say, name }) => say.received({ item: name('R9'), kind: 'reel' }),
  'a mount of doubtful time': ({ say, place, name }) =>
    say.mounted(name('R9'), place, 'F2', { ...record, uncertaintyMs: 60_000 }),
  'an unmount of doubtful time': ({ say, place, reel }) =>
    say.unmounted(reel, place, 'F1', { ...record, uncertaintyMs: 60_000 }),
  'a hold': ({ say, lot }) => say.held('lot', lot),
  'a label': ({ say }) => say.labelled('unit', 'W1', record),
};

describe('a rebuild makes the same tables', () => {
  for (const [what, make] of Object.entries(LONELY)) {
    it(`when ${what} was voided before it came`, () =>
      expectSameAfterRebuild((floor) => {
        const event = make(floor);
        return [floor.say.voided(event.id), event];
      }));

    it(`when ${what} was voided after it came`, () =>
      expectSameAfterRebuild((floor) => {
        const event = make(floor);
        return [event, floor.say.voided(event.id)];
      }));
  }

  it('when a label was printed again, and one was voided', () =>
    expectSameAfterRebuild(({ say }) => {
      const [first, again] = [say.labelled('unit', 'W1'), say.labelled('unit', 'W1', { reason: 'smeared' })];
      const badge = say.labelled('badge', 'op-1');
      return [first, again, badge, say.voided(first.id)];
    }));

  it('when a void came before the void that it names', () =>
    expectSameAfterRebuild(({ start, say }) => {
      const started = start('W1');
      const first = say.voided(started.id);
      return [say.voided(first.id), started, first];
    }));

  it('when late events were folded before voids took others away', () =>
    expectSameAfterRebuild(({ start, say, print, test }) => {
      const events = [start('W1'), say.passed('W1', print, record), say.failed('W1', test, record)];
      const [packed, moved] = [say.packed('W1', 'CT1', record), say.packed('W1', 'CT2', record)];
      const [nested, renested] = [say.nested('CT1', 'PL1', record), say.nested('CT1', 'PL2', record)];
      return [
        ...events.reverse(),
        say.voided(moved.id),
        say.voided(renested.id),
        nested,
        packed,
        moved,
        renested,
        say.shipped('PL1', { ...record, at: say.minute(1) }),
      ];
    }));
});
