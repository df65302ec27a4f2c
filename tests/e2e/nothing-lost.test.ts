import { v7 as uuidv7 } from 'uuid';
import { afterAll, expect, it } from 'vitest';
import { killPostgres } from '../support/kill-postgres';
import { randomFrom } from '../support/random-from';
import { startTestServer, type TestServer } from '../support/start-test-server';
import { makeTemporaryFolder } from '../support/temporary-folder';

const SEED = 20_261_125;
const CLIENTS = 4;
const UNITS_PER_CLIENT = 60;
const KILLS = 6;
const TOKEN = 'nothing-lost';

const folder = makeTemporaryFolder();
let server: TestServer | null = null;

afterAll(async () => {
  await server?.stop();
  folder.remove();
});

const PLANT = {
  stations: [{ code: 'P1', operation: 'place', slots: [{ name: 'F1', holds: 'reel' }] }],
  products: [
    {
      number: 'X',
      revision: 'A',
      route: [{ step: 10, operation: 'place' }],
      bom: [{ part: 'C-1', positions: ['C1'], station: 'P1', slot: 'F1' }],
    },
  ],
};

async function call(method: string, path: string, body?: unknown): Promise<Response> {
  return fetch(`${server?.origin}${path}`, {
    method,
    headers: { authorization: `Bearer ${TOKEN}`, 'content-type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    signal: AbortSignal.timeout(10_000),
  });
}

/** Sends until the server has answered for these events, as a tablet does: the same ids, however often. */
async function deliver(events: object[]): Promise<string[]> {
  for (;;) {
    try {
      const response = await call('POST', '/api/events', { events });
      if (response.ok) {
        const { results } = (await response.json()) as { results: { outcome: string }[] };
        return results.map((result) => result.outcome);
      }
    } catch {
      // The server died, or its answer was lost on the way.
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

it(`loses nothing and counts nothing twice when server and PostgreSQL are killed ${KILLS} times (seed ${SEED})`, async () => {
  const random = randomFrom(SEED);
  const env = { REELKIN_DATA: folder.path, REELKIN_API_TOKEN: TOKEN };
  server = await startTestServer(env);
  expect((await call('PUT', '/api/plant', PLANT)).status).toBe(200);
  const clockMs = Date.parse('2026-03-02T08:00:00Z');
  await deliver([
    {
      id: uuidv7(),
      type: 'item.received',
      at: '2026-03-02T07:00:00Z',
      body: { item: 'R1', kind: 'reel', part: 'C-1' },
    },
    {
      id: uuidv7(),
      type: 'item.mounted',
      at: '2026-03-02T07:01:00Z',
      station: 'P1',
      body: { item: 'R1', slot: 'F1' },
    },
  ]);

  const answered: string[] = [];
  let isDone = false;
  const clients = Array.from({ length: CLIENTS }, async (_, client) => {
    for (let index = 0; index < UNITS_PER_CLIENT; index += 1) {
      const unit = `U${client}-${String(index).padStart(3, '0')}`;
      const at = (seconds: number) =>
        new Date(clockMs + (index * 60 + client * 10 + seconds) * 1000).toISOString();
      const device = `tab-${client}`;
      const events = [
        { id: uuidv7(), type: 'unit.started', at: at(0), body: { unit, product: 'X', revision: 'A' } },
        { id: uuidv7(), type: 'unit.processed', at: at(1), station: 'P1', body: { unit, result: 'pass' } },
      ].map((event, order) => ({ ...event, device, deviceSeq: index * 2 + order + 1 }));
      answered.push(...(await deliver(events)));
    }
  });
  const killer = (async () => {
    for (let kills = 0; kills < KILLS && !isDone; kills += 1) {
      await new Promise((resolve) => setTimeout(resolve, 100 + random() * 600));
      if (kills % 2 === 1) {
        killPostgres(folder.path);
        continue;
      }
      await server?.kill();
      server = await startTestServer(env);
    }
  })();
  await Promise.all(clients);
  isDone = true;
  await killer;

  expect(answered.length).toBe(CLIENTS * UNITS_PER_CLIENT * 2);
  expect(answered.filter((outcome) => outcome === 'refused')).toEqual([]);
  const answer = (await (await call('GET', '/api/trace/where-used?item=R1&limit=5000')).json()) as {
    complete: boolean;
    counts: { units: number };
    units: { unit: string }[];
  };
  expect(answer.complete).toBe(true);
  expect(answer.units.length).toBe(CLIENTS * UNITS_PER_CLIENT);
  for (const { unit } of answer.units.filter((_, index) => index % 20 === 0)) {
    const record = (await (await call('GET', `/api/trace/as-built?unit=${unit}`)).json()) as {
      events: unknown[];
    };
    expect(record.events.length).toBe(2);
  }
}, 600_000);
