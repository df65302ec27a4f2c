import * as codes from '@/scripts/bench/line/bench-codes';
import { REEL_SLOTS, type ReelSlot, STATIONS, TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';
import { beganMs, mountedMs, passedMs } from '@/scripts/bench/line/generate-events';
import { cabinetOf, doubtOf, isMountedDuringWork, repairOf } from '@/scripts/bench/line/incidents';

/** One row of the textbook model: a unit and an item that it contains or was touched by. */
export type TextbookRow = {
  unit: string;
  item: string;
  relation: 'contains' | 'touched';
  is_certain: boolean;
  station: string | null;
  slot: string | null;
  at: string | null;
  through: string[];
};

/**
 * What every unit drew, told by the plan of the line and not by Reelkin: the textbook keeps one row a unit and item,
 * and every correction changes as many rows as units it moves.
 */
export function* textbookRows(unitCount: number): Generator<TextbookRow> {
  for (let unit = 0; unit < unitCount; unit += 1) {
    const rows = rowsOf(unit);
    yield* rows;
    const cabinet = cabinetOf(unit);
    if (cabinet === null) continue;
    const through = [codes.unitCode(unit)];
    for (const row of rows)
      yield { ...row, unit: codes.cabinetCode(cabinet), station: null, slot: null, at: null, through };
  }
}

function rowsOf(unit: number): TextbookRow[] {
  const byItem = new Map<string, TextbookRow>();
  const add = (row: TextbookRow) => {
    const known = byItem.get(row.item);
    byItem.set(
      row.item,
      known === undefined ? row : { ...known, is_certain: known.is_certain || row.is_certain },
    );
  };
  for (const slot of REEL_SLOTS) for (const row of drawsFrom(slot, unit)) add(row);
  for (const tool of TOOL_SLOTS)
    add({
      unit: codes.unitCode(unit),
      item: codes.toolCode(tool, unit),
      relation: 'touched',
      is_certain: true,
      station: STATIONS[tool.stationIndex]?.code ?? null,
      slot: tool.slot,
      at: new Date(passedMs(unit, tool.stationIndex)).toISOString(),
      through: [],
    });
  const repair = repairOf(unit);
  const slot = REEL_SLOTS.find(({ index }) => index === repair?.slot);
  if (repair === null || slot === undefined) return [...byItem.values()];
  const repaired = { unit: codes.unitCode(unit), station: null, slot: null, at: null, through: [] };
  if (repair.isSalvage) for (const row of drawsFrom(slot, unit - 1)) add({ ...row, ...repaired });
  else add({ ...repaired, item: codes.spareCode(unit), relation: 'contains', is_certain: true });
  return [...byItem.values()];
}

/** The reels that a unit drew from a slot, by the wire contract's rule of certainty. */
function drawsFrom({ index, stationIndex, slot }: ReelSlot, unit: number): TextbookRow[] {
  const nominal = codes.reelOf(index, unit);
  const [a, b] = [beganMs(unit, stationIndex), passedMs(unit, stationIndex)];
  return [nominal - 1, nominal, nominal + 1].flatMap((reel) => {
    if (reel < 0) return [];
    const [from, to] = [changeMs(index, stationIndex, reel), changeMs(index, stationIndex, reel + 1)];
    const [f, g] = [doubtOf(reel).uncertaintyMs ?? 0, doubtOf(reel + 1).uncertaintyMs ?? 0];
    const isCertain = a - f >= from && b + g < to;
    const isPossible = b + f >= from && a - g < to;
    if (!isPossible) return [];
    return [
      {
        unit: codes.unitCode(unit),
        item: codes.reelCode(index, reel),
        relation: 'contains',
        is_certain: isCertain,
        station: STATIONS[stationIndex]?.code ?? null,
        slot,
        at: new Date(b).toISOString(),
        through: [],
      },
    ];
  });
}

/** When a reel was put into its slot. */
function changeMs(slot: number, stationIndex: number, reel: number): number {
  const first = codes.firstUnitOf(slot, reel);
  return mountedMs(first, stationIndex, isMountedDuringWork(reel));
}
