import { v7 as uuidv7 } from 'uuid';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { APPLICATION_ROLE, openPool } from '@/lib/data/pool';
import type { AppendOutcome } from '@/lib/data/record/append-batch';
import { AppendQueue } from '@/lib/data/record/append-queue';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import type { TestDatabase } from '@/tests/support/test-database';

/** Two servers on one database: each has its own connection and its own queue. */
type Server = { append: (...events: object[]) => Promise<AppendOutcome[]>; end: () => Promise<void> };

function openServer(url: string): Server {
  const pool = openPool({ url, role: APPLICATION_ROLE, use: 'writing', connectionCountMax: 1 });
  const queue = new AppendQueue({ pool, clock: () => Date.now() * 1000 });
  return {
    append: (...events) =>
      queue.append(
        events.map((event) => toLogged(eventSchema.parse(event))),
        'test',
      ),
    end: () => pool.end(),
  };
}

const PLANT = {
  stations: [
    { code: 'P1', operation: 'place', slots: [{ name: 'F1', holds: 'reel' }] },
    { code: 'P2', operation: 'place', slots: [{ name: 'F1', holds: 'reel' }] },
  ],
  products: [
    {
      number: 'X',
      revision: 'A',
      route: [{ step: 10, operation: 'place' }],
      bom: ['P1', 'P2'].map((station) => ({ part: 'C-1', positions: ['C1'], station, slot: 'F1' })),
    },
  ],
};

let clockMs = Date.parse('2026-03-02T08:00:00Z');
function event(type: string, body: object, station?: string) {
  clockMs += 1000;
  const at = new Date(clockMs).toISOString();
  return { id: uuidv7(), type, at, ...(station === undefined ? {} : { station }), body };
}

const ready = (unit: string, item: string) => [
  event('item.received', { item, kind: 'reel', part: 'C-1' }),
  event('item.mounted', { item, slot: 'F1' }, 'P1'),
  event('unit.started', { unit, product: 'X', revision: 'A' }),
];

/** Both in either order; the test names what must hold whichever came first. */
const ORDERS = [
  ['first', 'second'],
  ['second', 'first'],
] as const;

describe('two servers on one database', () => {
  let fresh: TestDatabase;
  let servers: [Server, Server];
  let unitCount = 0;
  let unit = '';
  let reel = '';

  beforeAll(async () => {
    fresh = await openFreshDatabase();
    await putPlant(PLANT, 'test');
    servers = [openServer(fresh.ownerUrl), openServer(fresh.ownerUrl)];
  });
  afterAll(async () => {
    await Promise.all(servers.map((server) => server.end()));
    await closeDatabase();
    await fresh.drop();
  });
  beforeEach(() => {
    unitCount += 1;
    unit = `U-${unitCount}`;
    reel = `R-${unitCount}`;
  });

  async function race(order: readonly ('first' | 'second')[], first: object, second: object) {
    const [one, two] = servers;
    const runs = { first: () => one.append(first), second: () => two.append(second) };
    const pending = order.map((name) => ({ name, answer: runs[name]() }));
    const outcomes = new Map<string, AppendOutcome['outcome']>();
    for (const { name, answer } of pending) outcomes.set(name, (await answer)[0]?.outcome ?? 'refused');
    return outcomes;
  }

  const relationOf = async (item: string) =>
    (await whereUsed(whereUsedQuestionSchema.parse({ item }))).units.map((used) => used.relation);

  for (const order of ORDERS) {
    it(`starts a unit once when both start it (${order.join(', ')})`, async () => {
      const outcomes = await race(
        order,
        event('unit.started', { unit, product: 'X', revision: 'A' }),
        event('unit.started', { unit, product: 'X', revision: 'A' }),
      );
      expect([...outcomes.values()].sort()).toEqual(['recorded', 'refused']);
    });

    it(`counts the same event once when both send it (${order.join(', ')})`, async () => {
      await servers[0].append(...ready(unit, reel));
      const same = event('unit.processed', { unit, result: 'pass' }, 'P1');
      const outcomes = await race(order, same, same);
      expect([...outcomes.values()].sort()).toEqual(['already_recorded', 'recorded']);
      expect(await relationOf(reel)).toEqual(['contains']);
    });

    it(`either packs or holds first, and never packs after the hold (${order.join(', ')})`, async () => {
      await servers[0].append(
        ...ready(unit, reel),
        event('unit.processed', { unit, result: 'pass' }, 'P1'),
        event('unit.signed', { unit, meaning: 'released' }),
      );
      const hold = event('hold.placed', { target: { kind: 'unit', id: unit }, reason: 'suspect' });
      const pack = event('unit.packed', { unit, container: `CT-${unit}` });
      const outcomes = await race(order, pack, hold);
      expect(outcomes.get('second')).toBe('recorded');
      const again = await servers[0].append(event('unit.packed', { unit, container: `CT-${unit}` }));
      expect(again[0]?.outcome).toBe('refused');
    });

    it(`draws from the reel that stood there, whichever of mount and pass arrives first (${order.join(', ')})`, async () => {
      await servers[0].append(...ready(unit, reel));
      const next = `${reel}-next`;
      await servers[0].append(event('item.received', { item: next, kind: 'reel', part: 'C-1' }));
      const mount = event('item.mounted', { item: next, slot: 'F1' }, 'P1');
      const pass = event('unit.processed', { unit, result: 'pass' }, 'P1');
      const outcomes = await race(order, mount, pass);
      expect([...outcomes.values()]).toEqual(['recorded', 'recorded']);
      expect(await relationOf(reel)).toEqual([]);
      expect(await relationOf(next)).toEqual(['contains']);
    });

    it(`loses the effect of a voided pass, whichever arrives first (${order.join(', ')})`, async () => {
      await servers[0].append(...ready(unit, reel));
      const pass = event('unit.processed', { unit, result: 'pass' }, 'P1');
      const voided = event('event.voided', { event: pass.id, reason: 'scanned the wrong unit' });
      const outcomes = await race(order, pass, voided);
      expect([...outcomes.values()]).toEqual(['recorded', 'recorded']);
      expect(await relationOf(reel)).toEqual([]);
    });
  }
});

describe('fifty clients at once', () => {
  it('lose nothing, count nothing twice and meet no deadlock (seed 5)', async () => {
    const seed = 5;
    const fresh = await openFreshDatabase();
    const { plant, events } = randomHistory(seed, { eventCount: 400 });
    await putPlant(plant, 'test');
    const model = new ReferenceModel(plant);
    for (const each of events) model.record(each);
    const servers = [openServer(fresh.ownerUrl), openServer(fresh.ownerUrl)];
    // Every event is sent by two of the fifty clients, to different servers.
    const clients = Array.from({ length: 50 }, (_, client) =>
      shuffle(
        client,
        events.filter((_, index) => index % 50 === client || (index + 25) % 50 === client),
      ),
    );
    const outcomes: string[] = [];
    await Promise.all(
      clients.map(async (mine, client) => {
        for (const each of mine)
          for (const outcome of (await servers[client % 2]?.append(each)) ?? [])
            outcomes.push(outcome.outcome);
      }),
    );
    expect(outcomes.filter((outcome) => outcome === 'recorded').length).toBe(events.length);
    expect(outcomes.filter((outcome) => outcome === 'already_recorded').length).toBe(events.length);
    const items = new Set(
      events.flatMap(({ body }) => ('item' in body && body.item !== undefined ? [body.item] : [])),
    );
    for (const item of items) {
      const answer = await whereUsed(whereUsedQuestionSchema.parse({ item, limit: 5000 }));
      const expected = model.whereUsed({ item });
      const key = (used: { unit: string; relation: string; certainty: string }) =>
        [used.unit, used.relation, used.certainty].join();
      expect(answer.units.map(key)).toEqual(expected.units.map(key));
    }
    await Promise.all(servers.map((server) => server.end()));
    await closeDatabase();
    await fresh.drop();
  });
});
