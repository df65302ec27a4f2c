import { describe, expect, it } from 'vitest';
import { rebuild } from '@/lib/data/rebuild';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { asBuilt } from '@/lib/server/as-built';
import { database } from '@/lib/server/database';
import { readDevices } from '@/lib/server/read-devices';
import { whereUsed } from '@/lib/server/where-used';
import { whereUsedCsv } from '@/lib/server/where-used-csv';
import { type Random, randomFrom } from '@/tests/reference/model/random';
import { shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import type { WireEvent } from '@/tests/reference/model/wire-types';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { eventMaker } from '@/tests/support/event-maker';
import { closeDatabase, freshDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const PLANT = {
  site: { code: 'T', name: 'T', timeZone: 'Europe/London' },
  parts: [],
  stations: [],
  products: [],
  operators: [],
};
const anything = () => whereUsedQuestionSchema.parse({ item: 'R1', limit: 5 });

const numbersOf = (ranges: readonly (readonly [number, number])[]) =>
  ranges.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, index) => from + index));

/** Devices that lose some of their events, with retirements of some of them, voids of some of those, and late events. */
function deviceHistory(random: Random): { arrive: WireEvent[]; late: WireEvent[] } {
  const say = eventMaker('2026-03-02T06:00:00Z', `0198c0d${random.int(0, 9)}`);
  const arrive: unknown[] = [];
  const late: unknown[] = [];
  for (let device = 0; device < 5; device += 1) {
    const eventCount = random.int(0, 12);
    for (let deviceSeq = 1; deviceSeq <= eventCount; deviceSeq += 1) {
      const at = { device: `tab-${device}`, deviceSeq, gate: 'record' as const };
      const event = say.signed(`U-${deviceSeq}`, at);
      if (random.chance(0.7)) arrive.push(event);
      else if (random.chance(0.4)) late.push(event);
    }
  }
  for (const device of ['tab-0', 'tab-1', 'tab-1', 'tab-2', 'tab-never']) {
    if (random.chance(0.3)) continue;
    const retired = say.deviceRetired(device);
    arrive.push(retired);
    if (random.chance(0.4)) (random.chance(0.5) ? arrive : late).push(say.voided(retired.id));
  }
  return { arrive: arrive as WireEvent[], late: late as WireEvent[] };
}

/** The server's statement, in the words of the model. */
async function stated() {
  const { owing, lost, complete } = await whereUsed(anything());
  const { devices } = await readDevices();
  const retiredBy = (device: string) => devices.find((each) => each.device === device)?.retired?.event;
  const highestOf = (device: string) => devices.find((each) => each.device === device)?.highest;
  expect(complete).toBe(owing.length === 0 && lost.length === 0);
  return {
    owing: owing.map(({ device, missing }) => ({
      device,
      missing: numbersOf(missing),
      highest: highestOf(device),
    })),
    lost: lost.map(({ device, missing, highest }) => ({
      device,
      missing: numbersOf(missing),
      highest,
      retiredBy: retiredBy(device),
    })),
  };
}

describe('what is owing and what is lost', () => {
  for (let seed = 1; seed <= 8; seed += 1)
    it(`equals the independent model in any order of arrival, and after a rebuild (seed ${seed})`, async () => {
      const { arrive, late } = deviceHistory(randomFrom(seed));
      const model = new ReferenceModel(PLANT);
      for (const event of arrive) model.record(event);
      const expectedSoFar = model.missing();
      for (const event of late) model.record(event);
      const expected = model.missing();
      for (const turn of [0, 1]) {
        const fresh = await openFreshDatabase();
        await recordHistory(turn === 0 ? arrive : shuffle(seed, arrive), turn === 0 ? 100 : 1);
        expect(await stated()).toEqual(expectedSoFar);
        // A retired device that speaks again is heard.
        const results = await recordHistory(turn === 0 ? late : shuffle(seed + 1, late), 3);
        for (const { outcome } of results) expect(outcome).toBe('recorded');
        expect(await stated()).toEqual(expected);
        const before = await dumpReadTables(database().pool);
        await rebuild(fresh.ownerUrl, () => undefined);
        expect(await dumpReadTables(database().pool)).toEqual(before);
        expect(await stated()).toEqual(expected);
        await closeDatabase();
        await fresh.drop();
      }
    });

  it('was looked at: the histories above owe, lose and bring back', () => {
    const all = Array.from({ length: 8 }, (_, index) => {
      const { arrive, late } = deviceHistory(randomFrom(index + 1));
      const model = new ReferenceModel(PLANT);
      for (const event of [...arrive, ...late]) model.record(event);
      return model.missing();
    });
    expect(all.flatMap(({ owing }) => owing).length).toBeGreaterThan(5);
    expect(all.flatMap(({ lost }) => lost).length).toBeGreaterThan(5);
    expect(all.flatMap(({ lost }) => lost).some(({ missing }) => missing.length > 0)).toBe(true);
  });
});

describe('a lost device', () => {
  freshDatabase();
  const say = eventMaker('2026-04-02T06:00:00Z');
  const on = (deviceSeq: number) => ({
    device: 'tab-9',
    deviceSeq,
    station: 'S-1',
    operator: 'op-1',
    uncertaintyMs: 40,
    gate: 'record' as const,
  });

  it('owes, is lost with its reason in every answer, and owes again when the retirement is voided', async () => {
    await recordHistory([say.signed('U-1', on(1)), say.signed('U-1', on(2)), say.signed('U-1', on(5))]);
    const [owing] = (await readDevices()).devices;
    expect(owing).toMatchObject({
      device: 'tab-9',
      highest: 5,
      missing: [[3, 4]],
      missingCount: 2,
      last: { station: 'S-1', operator: 'op-1', uncertaintyMs: 40 },
      retired: null,
    });
    expect(owing?.missingSince).toBe(owing?.lastSeenAt);

    const retired = say.deviceRetired('tab-9');
    expect(await recordHistory([retired])).toMatchObject([{ outcome: 'recorded' }]);
    const lost = {
      device: 'tab-9',
      missing: [[3, 4]],
      highest: 5,
      lastSeenAt: owing?.lastSeenAt,
      retiredAt: retired.at,
      reason: 'fell into the wave solder',
    };
    const answer = await whereUsed(anything());
    expect(answer).toMatchObject({ complete: false, owing: [], lost: [lost] });
    expect(await asBuilt('U-1')).toMatchObject({ complete: false, owing: [], lost: [lost] });
    await recordHistory([say.signed('U-1', on(4))]);
    const [entry] = (await readDevices()).devices;
    expect(entry).toMatchObject({ missing: [[3, 3]], retired: { event: retired.id, hasSpokenSince: true } });

    await recordHistory([say.voided(retired.id)]);
    const after = await whereUsed(anything());
    expect(after).toMatchObject({
      complete: false,
      owing: [{ device: 'tab-9', missing: [[3, 3]] }],
      lost: [],
    });
  });

  it('stands in the heading of a CSV with its gaps, and with what nobody can number', async () => {
    await recordHistory([
      say.passed('U-7', 'S-1', { device: 'tab-3', deviceSeq: 1, operator: 'op-7', gate: 'record' }),
      say.passed('U-8', 'S-1', { device: 'tab-3', deviceSeq: 4, operator: 'op-7', gate: 'record' }),
      say.deviceRetired('tab-3'),
      say.deviceRetired('tab-8'),
    ]);
    const csv = await whereUsedCsv(whereUsedQuestionSchema.parse({ operator: 'op-7' }));
    const [header, ...rows] = (await new Response(csv).text()).trimEnd().split('\r\n');
    expect(header).toMatch(
      /,not complete as of \S+Z: tab-9 owes 3; tab-3 was lost with 2-3 5- for good; tab-8 was lost with 1- for good$/,
    );
    expect(rows.length).toBe(2);
    for (const row of rows) expect(row).toMatch(/,no$/);
  });
});
