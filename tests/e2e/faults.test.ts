import { expect, test } from 'vitest';
import { FAULTS } from '@/tests/support/fault-proxy';
import { runThroughFaults } from '@/tests/support/run-through-faults';

const SEED = 20_261_125;

test(`two tablets lose nothing and count nothing twice over a network that fails in every way (seed ${SEED})`, {
  timeout: 600_000,
}, async () => {
  const { shown, recorded, doubtful, faults, kills } = await runThroughFaults({
    seed: SEED,
    tabletCount: 2,
    unitsEach: 30,
    faultEvery: 3,
    browserKills: 1,
    serverKills: 1,
    databaseKills: 0,
  });
  expect(shown + doubtful).toBe(60);
  expect(recorded).toBeGreaterThanOrEqual(shown);
  expect(FAULTS.filter((fault) => faults[fault] === 0)).toEqual([]);
  expect(Object.values(faults).reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(16);
  expect(kills).toEqual({ browser: 1, server: 1, database: 0 });
});
