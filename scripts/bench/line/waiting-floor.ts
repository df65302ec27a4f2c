import type { WireEvent } from '@/lib/domain/events/catalogue';
import { reelCode, toolCode, unitCode } from '@/scripts/bench/line/bench-codes';
import { PRODUCT, REEL_SLOTS, STATIONS, TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';

/** The station that everything waits for: the last placement machine, with 18 reels in its slots. */
const WAITED_FOR = 7;
export const WAITED_STATION = STATIONS[WAITED_FOR]?.code ?? '';

const UNIT_EACH_MS = 4000;
const STATION_EACH_MS = 400;

/** So many units that have passed every station before one, and are due there now; unit after unit, the slots filled. */
export function* waitingFloor(unitCount: number, endMs: number): Generator<WireEvent> {
  let sequence = 0;
  const timed = (atMs: number) => {
    sequence += 1;
    const time = atMs.toString(16).padStart(12, '0');
    const id = `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${sequence.toString(16).padStart(12, '0')}`;
    return { id, at: new Date(atMs).toISOString() };
  };
  const beginMs = endMs - unitCount * UNIT_EACH_MS;
  for (const { index, slot, part, stationIndex } of REEL_SLOTS) {
    const body = {
      item: reelCode(index, 0),
      kind: 'reel' as const,
      part,
      lot: `LOT-${index}`,
      quantity: 5000,
    };
    yield { ...timed(beginMs - 2000), type: 'item.received', body };
    yield {
      ...timed(beginMs - 1000),
      type: 'item.mounted',
      station: STATIONS[stationIndex]?.code ?? '',
      body: { item: body.item, slot },
    };
  }
  for (const tool of TOOL_SLOTS) {
    const body = { item: toolCode(tool, 0), kind: tool.holds };
    yield { ...timed(beginMs - 2000), type: 'item.received', body };
    yield {
      ...timed(beginMs - 1000),
      type: 'item.mounted',
      station: STATIONS[tool.stationIndex]?.code ?? '',
      body: { item: body.item, slot: tool.slot },
    };
  }
  for (let index = 0; index < unitCount; index += 1) {
    const unit = unitCode(index);
    const atMs = beginMs + index * UNIT_EACH_MS;
    const { number: product, revision } = PRODUCT;
    yield { ...timed(atMs), type: 'unit.started', body: { unit, product, revision } };
    for (const [before, { code: station }] of STATIONS.slice(0, WAITED_FOR).entries())
      yield {
        ...timed(atMs + (before + 1) * STATION_EACH_MS),
        type: 'unit.processed',
        station,
        body: { unit, result: 'pass' },
      };
  }
}
