import { expect, test } from 'vitest';
import { runThroughFaults } from '@/tests/support/run-through-faults';

const SEED = Number(process.env.REELKIN_SOAK_SEED ?? 20_261_125);
const EVENTS = Number(process.env.REELKIN_SOAK_EVENTS ?? 5000);
const TABLETS = 4;
/** 200 for the whole run; a shorter one meets as many in proportion. */
const FAULTS_MIN = Math.min(200, Math.floor(EVENTS / 25));

test(`${EVENTS} events of ${TABLETS} tablets through at least ${FAULTS_MIN} faults (seed ${SEED})`, {
  timeout: 3 * 3_600_000,
}, async () => {
  const startedAt = performance.now();
  const report = await runThroughFaults({
    seed: SEED,
    tabletCount: TABLETS,
    unitsEach: Math.ceil(EVENTS / TABLETS),
    faultEvery: Math.max(2, Math.floor(EVENTS / 400)),
    browserKills: 8,
    serverKills: 4,
    databaseKills: 4,
  });
  const faultCount = [...Object.values(report.faults), ...Object.values(report.kills)].reduce(
    (sum, count) => sum + count,
    0,
  );
  const seconds = Math.round((performance.now() - startedAt) / 1000);
  console.log(JSON.stringify({ ...report, faultCount, seconds }, null, 2));
  expect(report.shown + report.doubtful).toBe(Math.ceil(EVENTS / TABLETS) * TABLETS);
  expect(faultCount).toBeGreaterThanOrEqual(FAULTS_MIN);
});
