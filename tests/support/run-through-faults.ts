import { join } from 'node:path';
import pg from 'pg';
import { expect } from 'vitest';
import { z } from 'zod';
import { runningClusterUrl } from '@/lib/data/embedded-cluster';
import { FAULTS, type Fault, openFaultProxy } from '@/tests/support/fault-proxy';
import { FaultyTablet } from '@/tests/support/faulty-tablet';
import { killPostgres } from '@/tests/support/kill-postgres';
import { randomFrom } from '@/tests/support/random-from';
import { openShift, type Shift } from '@/tests/support/shift-scene';
import { makeTemporaryFolder } from '@/tests/support/temporary-folder';

/** How much work, and how much goes wrong; kills are spread over the run at places that the seed decides. */
export type FaultPlan = {
  seed: number;
  tabletCount: number;
  unitsEach: number;
  /** One of so many deliveries of events meets a fault. */
  faultEvery: number;
  browserKills: number;
  serverKills: number;
  databaseKills: number;
};

/** What happened in a run. */
export type FaultReport = {
  shown: number;
  recorded: number;
  doubtful: number;
  faults: Record<Fault, number>;
  kills: { browser: number; server: number; database: number };
};

const STATION = 'L1-PRINT';
const rowSchema = z.object({ device: z.string(), device_seq: z.number(), unit: z.string() });

/**
 * Tablets pass units at a station over a network that fails, while browsers, server and PostgreSQL are killed. In the
 * end every event that a page has shown as given is in the log exactly once, in the order of its device, and so are
 * the device's numbers; only what a killed page could not show any more may be there or not.
 */
export async function runThroughFaults(plan: FaultPlan): Promise<FaultReport> {
  const shift = await openShift();
  const profiles = makeTemporaryFolder();
  const random = randomFrom(plan.seed);
  const proxy = await openFaultProxy(shift.origin, faultsOf(plan, random));
  const tablets = Array.from(
    { length: plan.tabletCount },
    (_, index) =>
      new FaultyTablet({
        origin: proxy.origin,
        profile: join(profiles.path, `tablet-${index}`),
        badge: 'op-1',
        station: STATION,
      }),
  );
  const units = tablets.map((_, tablet) =>
    Array.from({ length: plan.unitsEach }, (_, index) => serial(tablet * 100_000 + index + 1)),
  );
  try {
    for (const mine of units)
      for (let from = 0; from < mine.length; from += 500)
        await shift.send(...mine.slice(from, from + 500).flatMap((unit) => shift.unit(unit, 0)));
    for (const tablet of tablets) await tablet.open();
    await Promise.all(tablets.map((tablet, index) => tablet.knows(units[index]?.at(-1) ?? '')));
    const disasters = disastersOf(plan, shift, random);
    await Promise.all(
      tablets.map(async (tablet, index) => {
        for (const unit of units[index] ?? []) {
          if (disasters.next() === 'browser') await tablet.passAndDie(unit);
          else await tablet.pass(unit);
        }
      }),
    );
    await disasters.over();
    await proxy.flush();
    await Promise.all(tablets.map((tablet) => tablet.delivered()));
    await proxy.flush();
    const recorded = await recordedUnits(shift);
    for (const [index, tablet] of tablets.entries()) expectSame(tablet, units[index] ?? [], recorded);
    return {
      shown: tablets.reduce((sum, { shown }) => sum + shown.length, 0),
      recorded: recorded.length,
      doubtful: tablets.reduce((sum, { doubtful }) => sum + doubtful.length, 0),
      faults: proxy.counts,
      kills: disasters.counts,
    };
  } finally {
    await Promise.all(tablets.map((tablet) => tablet.close()));
    await proxy.close();
    await shift.close();
    profiles.remove();
  }
}

/** Every kind in turn, so that none is left out. */
function faultsOf({ faultEvery }: FaultPlan, random: () => number): () => Fault | null {
  let deliveries = 0;
  let waiting: Fault[] = [];
  return () => {
    deliveries += 1;
    if (deliveries % faultEvery !== 0) return null;
    if (waiting.length === 0) waiting = [...FAULTS];
    const [fault] = waiting.splice(Math.floor(random() * waiting.length), 1);
    return fault ?? null;
  };
}

/** Kills, one after so many units; a browser's is for its own tablet to carry out. */
function disastersOf(plan: FaultPlan, shift: Shift, random: () => number) {
  const counts = { browser: 0, server: 0, database: 0 };
  const total = plan.tabletCount * plan.unitsEach;
  const kinds = [
    ...Array.from({ length: plan.browserKills }, () => 'browser' as const),
    ...Array.from({ length: plan.serverKills }, () => 'server' as const),
    ...Array.from({ length: plan.databaseKills }, () => 'database' as const),
  ];
  // Not at the very end: what was killed must find work when it is back.
  const due = new Map(
    kinds.map((kind, index) => [
      Math.floor((total * (0.1 + 0.7 * (index + random()))) / kinds.length) + 1,
      kind,
    ]),
  );
  let unitCount = 0;
  let last: Promise<void> = Promise.resolve();
  return {
    counts,
    /** To be called before each unit. */
    next(): 'browser' | null {
      unitCount += 1;
      const kind = due.get(unitCount);
      if (kind === undefined) return null;
      counts[kind] += 1;
      if (kind === 'browser') return kind;
      last = last.then(async () => {
        if (kind === 'database') return killPostgres(shift.dataFolder);
        await shift.kill();
        await shift.revive();
      });
      return null;
    },
    over: () => last,
  };
}

type Recorded = z.infer<typeof rowSchema>;

/** What the log has of the tablets, in its own order. */
async function recordedUnits(shift: Shift): Promise<Recorded[]> {
  const client = new pg.Client({ connectionString: runningClusterUrl(shift.dataFolder) ?? '' });
  await client.connect();
  try {
    const { rows } = await client.query(
      `select device, device_seq::integer, body ->> 'unit' as unit from log.event
       where type = 'unit.processed' and device is not null order by position`,
    );
    return rows.map((row) => rowSchema.parse(row));
  } finally {
    await client.end();
  }
}

function expectSame(tablet: FaultyTablet, units: readonly string[], recorded: readonly Recorded[]): void {
  const mine = recorded.filter(({ unit }) => units.includes(unit));
  const inLog = new Set(mine.map(({ unit }) => unit));
  const accepted = units.filter((unit) => tablet.shown.includes(unit));
  expect(accepted).toEqual(tablet.shown);
  const expected = units.filter((unit) =>
    tablet.doubtful.includes(unit) ? inLog.has(unit) : accepted.includes(unit),
  );
  expect(mine.map(({ unit }) => unit)).toEqual(expected);
  expect(new Set(mine.map(({ device }) => device)).size).toBe(1);
  expect(mine.map((row) => row.device_seq)).toEqual(mine.map((_, index) => index + 1));
}

function serial(number: number): string {
  return `WX4C${String(number).padStart(7, '0')}`;
}
