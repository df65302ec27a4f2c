import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPool } from '@/lib/data/pool';
import { rebuild } from '@/lib/data/rebuild';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsedCsv } from '@/lib/server/where-used-csv';
import { toolCode, unitCode } from '@/scripts/bench/line/bench-codes';
import { benchPlant, TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';
import { copiedCode, copyHistory } from '@/scripts/bench/line/copy-history';
import { generateEvents } from '@/scripts/bench/line/generate-events';
import { loadHistory } from '@/scripts/bench/line/load-history';
import { compareAsBuilt } from '@/scripts/bench/measures/as-built';
import { measureCsv } from '@/scripts/bench/measures/stream-csv';
import { compareCopies, compareWhereUsed, type Models, usedReels } from '@/scripts/bench/measures/where-used';
import { expectEqual } from '@/scripts/bench/models/canonical-answer';
import { type DuckModel, openDuckModel } from '@/scripts/bench/models/duckdb-model';
import { openGraphModel } from '@/scripts/bench/models/graph-model';
import { loadTextbook } from '@/scripts/bench/models/textbook-model';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';
import type { TestDatabase } from '@/tests/support/test-database';

const UNITS = 1000;
const silent = () => undefined;

describe('the benchmark', () => {
  let fresh: TestDatabase;
  let client: pg.Client;
  let duck: DuckModel;
  let models: Models;
  const folder = makeTemporaryFolder();

  beforeAll(async () => {
    fresh = await openFreshDatabase();
    await putPlant(benchPlant(), 'test');
    await loadHistory(fresh.ownerUrl, UNITS, silent);
    await rebuild(fresh.ownerUrl, silent);
    await loadTextbook(fresh.ownerUrl, UNITS);
    client = new pg.Client({ connectionString: fresh.ownerUrl });
    await client.connect();
    duck = await openDuckModel(client, folder.path);
    models = { hasTextbook: true, duck, graph: await openGraphModel(client, UNITS) };
  });
  afterAll(async () => {
    duck.close();
    folder.remove();
    await client.end();
    await closeDatabase();
    await fresh.drop();
  });

  it('gets the same answer about a reel from all of its models', async () => {
    const reels = usedReels(UNITS, 90);
    expect(new Set(reels).size).toBe(90);
    expect(await compareWhereUsed(client, reels, models)).toBeGreaterThan(400);
  });

  it('gets the same draws of a unit from Reelkin and the textbook', async () => {
    const units = Array.from({ length: 60 }, (_, index) => unitCode(index * 10 + (index % 10)));
    const pool = openPool({ url: fresh.ownerUrl, use: 'reading' });
    try {
      await compareAsBuilt(pool, units);
    } finally {
      await pool.end();
    }
  });

  it('streams an answer as often as readers leave it half read: each frees its connection', async () => {
    const question = { item: toolCode(TOOL_SLOTS[0], 0), limit: 5000 };
    for (let reader = 0; reader < 6; reader += 1) {
      const stream = (await whereUsedCsv(question)).getReader();
      expect((await stream.read()).done).toBe(false);
      await stream.cancel();
    }
    expect((await measureCsv(question.item)).rows).toBe(UNITS + UNITS / 50);
  });

  it('fails when an answer differs between models', async () => {
    const reels = usedReels(UNITS, 1);
    const wrong = { ...models, duck: { ...duck, whereUsed: async () => [{ unit: 'another' }] } };
    await expect(compareWhereUsed(client, reels, wrong)).rejects.toThrow(
      /Reelkin and DuckDB answer .* differently/,
    );
    expect(() =>
      expectEqual(
        [
          { model: 'a', answer: 'x' },
          { model: 'b', answer: 'y' },
        ],
        'q',
      ),
    ).toThrow(/differently/);
  });
});

describe('a history that was copied', () => {
  it('answers about each copy as about the first', async () => {
    const fresh = await openFreshDatabase();
    try {
      await putPlant(benchPlant(), 'test');
      await loadHistory(fresh.ownerUrl, UNITS, silent);
      await rebuild(fresh.ownerUrl, silent);
      await copyHistory(fresh.ownerUrl, 3, silent);
      await compareCopies(usedReels(UNITS, 60), 3);
      const stencil = await measureCsv(copiedCode(toolCode(TOOL_SLOTS[0], 0), 2));
      expect(stencil.rows).toBe(UNITS + UNITS / 50);
    } finally {
      await closeDatabase();
      await fresh.drop();
    }
  });
});

describe("the benchmark's history", () => {
  it('passes the gate event by event, and makes the tables that COPY and a rebuild make', async () => {
    const units = 120;
    const loaded = await openFreshDatabase();
    await putPlant(benchPlant(), 'test');
    const count = await loadHistory(loaded.ownerUrl, units, silent);
    await rebuild(loaded.ownerUrl, silent);
    const copied = await dumpReadTables(database().pool);
    await closeDatabase();
    await loaded.drop();

    const recorded = await openFreshDatabase();
    await putPlant(benchPlant(), 'test');
    const results = await recordHistory([...generateEvents(units)]);
    expect(results.filter(({ outcome }) => outcome !== 'recorded')).toEqual([]);
    expect(results.length).toBe(count);
    expect(await dumpReadTables(database().pool)).toEqual(copied);
    await closeDatabase();
    await recorded.drop();
  });
});
