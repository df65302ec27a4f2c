import { describe, expect, it } from 'vitest';
import { findDoubtWindows } from '@/lib/data/balance/find-doubt-windows';
import { suspectPasses, windowOf } from '@/lib/domain/balance/doubt-window';
import { explain } from '@/lib/domain/balance/explain';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { randomFrom } from '@/tests/reference/model/random';
import { ledgerOfEvents } from '@/tests/support/balance/ledger-of-events';
import { MISSED, type ReelHistory, reelHistory } from '@/tests/support/balance/reel-history';
import { eventMaker } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const { pool } = freshDatabase();

const SEED = Number(process.env.REELKIN_SEED ?? 20_260_302);
const HISTORY_COUNT = 12;
const KINDS = [...MISSED, null];

const question = (item: string) => whereUsedQuestionSchema.parse({ item, limit: 5000 });

/** Sends a history in an order that has nothing to do with its times. */
async function recordShuffled(events: readonly WireEvent[], seed: number): Promise<void> {
  const late = randomFrom(seed).some(
    events.map((event) => ({ ...event, gate: 'record' as const })),
    events.length,
  );
  for (const { outcome, refusal } of await recordHistory(late, 500))
    expect({ outcome, refusal }).toEqual({ outcome: 'recorded', refusal: undefined });
}

/** The windows that the rules name for a reel, by walking the events. */
function expectedWindows({ events, plant }: ReelHistory, reel: string): string[] {
  const ledger = ledgerOfEvents(events, plant);
  const windows = explain(ledger).flatMap(({ suspicions }) =>
    suspicions.flatMap((suspicion) => {
      const window = windowOf(suspicion, suspectPasses(suspicion, ledger.passesOf(suspicion.stay)));
      return window?.items.includes(reel) ? [JSON.stringify(window)] : [];
    }),
  );
  return [...new Set(windows)].sort();
}

describe(`reels with counts, seed ${SEED}`, () => {
  for (let index = 0; index < HISTORY_COUNT; index += 1) {
    const missed = KINDS[index % KINDS.length] ?? null;
    it(`history ${index}, ${missed ?? 'every change scanned'}: where-used, as-built and the rules agree`, async () => {
      const seed = SEED + index;
      const history = reelHistory({ seed, missed, name: `-${index}` });
      const { plant, events, planted } = history;
      await putPlant(plant, 'test');
      await recordShuffled(events, seed);
      const reels = events.flatMap((event) => (event.type === 'item.received' ? [event.body.item] : []));
      const drawn = new Map<string, string[]>();
      for (const reel of reels) {
        const windows = await findDoubtWindows(pool(), question(reel));
        expect(windows.map((window) => JSON.stringify(window)).sort()).toEqual(
          expectedWindows(history, reel),
        );
        const { units } = await whereUsed(question(reel));
        for (const { unit, certainty, because = [] } of units)
          drawn.set(unit, [...(drawn.get(unit) ?? []), `${reel} ${certainty} ${because.join(' ')}`]);
      }
      if (planted !== null)
        for (const unit of planted.units)
          for (const reel of [planted.used, planted.recorded])
            expect(drawn.get(unit)).toContain(`${reel} possible balance`);
      const doubtful = [...drawn.values()].filter((lines) => lines.some((line) => line.includes('balance')));
      expect(doubtful.length > 0).toBe(planted !== null);
      for (const [unit, lines] of drawn) {
        const built = (await asBuilt(unit))?.draws.map(
          ({ item, certainty, because = [] }) => `${item} ${certainty} ${because.join(' ')}`,
        );
        expect({ unit, built: built?.sort() }).toEqual({ unit, built: lines.sort() });
      }
    });
  }
});

it('a plant that states no attrition is not weighed', async () => {
  const history = reelHistory({ seed: SEED, missed: 'late', name: '-plain' });
  const { parts, ...rest } = history.plant;
  await putPlant({ ...rest, parts: parts?.map(({ number }) => ({ number })) ?? [] }, 'test');
  await recordHistory(history.events, 500);
  const { planted } = history;
  if (planted === null) throw new Error('nothing was planted');
  const { units, counts } = await whereUsed(question(planted.recorded));
  expect(counts.possible).toBe(0);
  expect(units.map(({ unit }) => unit)).toEqual(expect.arrayContaining(planted.units));
});

describe('a device that owes events', () => {
  const say = eventMaker('2026-03-09T06:00:00Z');
  const at = (second: number) =>
    `2026-03-09T08:${String(Math.floor(second / 60)).padStart(2, '0')}:${String(second % 60).padStart(2, '0')}Z`;
  const scan = (deviceSeq: number, second: number) => ({
    device: 'tab-gap',
    deviceSeq,
    at: at(second),
    gate: 'record' as const,
  });
  const missing = say.mounted('RG-2', 'GAP-PLACE', '1-01', scan(2, 120));
  const events = [
    ...['RG-1', 'RG-2', 'RG-3'].map((item) => say.received({ item, kind: 'reel' })),
    ...['G1', 'G2', 'G3', 'G4'].map((unit) => say.started({ unit, product: 'GAP', revision: 'A' })),
    say.mounted('RG-1', 'GAP-PLACE', '1-01', scan(1, 60)),
    say.mounted('RG-3', 'GAP-PLACE', '1-01', scan(3, 240)),
    say.passed('G1', 'GAP-PLACE', { at: at(30), gate: 'record' }),
    say.passed('G2', 'GAP-PLACE', { at: at(90), gate: 'record' }),
    say.passed('G3', 'GAP-PLACE', { at: at(180), gate: 'record' }),
    say.passed('G4', 'GAP-PLACE', { at: at(300), gate: 'record' }),
  ];
  const unitsOf = async (item: string) =>
    (await whereUsed(question(item))).units.map(
      ({ unit, certainty, because = [] }) => `${unit} ${[certainty, ...because].join(' ')}`,
    );
  const builtOf = async (unit: string) =>
    (await asBuilt(unit))?.draws
      .map(({ item, certainty, because = [] }) => `${item} ${[certainty, ...because].join(' ')}`)
      .sort();

  it('leaves the units between its neighbouring numbers possible on both sides, until the event comes', async () => {
    await putPlant(
      {
        stations: [
          {
            code: 'GAP-PLACE',
            operation: 'place',
            slots: [{ name: '1-01', holds: 'reel' }],
            scannedBy: ['tab-gap'],
          },
        ],
        products: [
          {
            number: 'GAP',
            revision: 'A',
            bom: [{ part: 'C-1U', positions: ['C1'], station: 'GAP-PLACE', slot: '1-01' }],
          },
        ],
      },
      'test',
    );
    await recordHistory(events);
    expect(await unitsOf('RG-1')).toEqual(['G2 possible gap', 'G3 possible gap']);
    expect(await unitsOf('RG-3')).toEqual(['G2 possible gap', 'G3 possible gap', 'G4 certain']);
    expect(await builtOf('G3')).toEqual(['RG-1 possible gap', 'RG-3 possible gap']);
    expect(await builtOf('G1')).toEqual([]);
    expect(await builtOf('G4')).toEqual(['RG-3 certain']);
    await recordHistory([missing]);
    expect(await unitsOf('RG-1')).toEqual(['G2 certain']);
    expect(await unitsOf('RG-2')).toEqual(['G3 certain']);
    expect(await unitsOf('RG-3')).toEqual(['G4 certain']);
    expect(await builtOf('G3')).toEqual(['RG-2 certain']);
  });
});
