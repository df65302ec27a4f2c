import { type History, liveOf } from '@/tests/reference/model/history';
import { compareCodes } from '@/tests/reference/model/order';
import { drawingPasses, greyUntil, type ModelStay, modelStays, partOf } from '@/tests/reference/model/stays';

/** A moment at which it is known how many pieces are left of an item. */
export type Count = { id: string; us: number; low: number; high: number; left: number; isFinal: boolean };

/** What two counts of an item (`to` null: nothing came after the last one) say of the use between them. */
export type Weighing = {
  item: string;
  part: string;
  from: Count;
  to: Count | null;
  /** Pieces that came from another item; negative where units recorded on others drew from this one. */
  movedMin: number;
  movedMax: number;
  verdict: 'agrees' | 'surplus' | 'deficit';
};

/** Times that matter, in microseconds, both included. */
export type During = { min: number; max: number };

const ROUNDING = 1e-6;

/** What items and their neighbours in slots are weighed to, in the periods that matter, and the stays looked at. */
export function weigh(
  history: History,
  items: readonly string[],
  during: During = { min: -Infinity, max: Infinity },
): { weighings: Weighing[]; stays: ModelStay[] } {
  const all = modelStays(history);
  const stays = all.filter((stay, index) => {
    const beside = [all[index - 1], stay, all[index + 1]].filter(
      (each) => each?.station === stay.station && each.slot === stay.slot,
    );
    return beside.some((each) => each !== undefined && items.includes(each.item));
  });
  const seen = stays.filter(({ from, to }) => from <= during.max && to >= during.min);
  const reels = [...new Set([...items, ...seen.map(({ item }) => item)])].sort(compareCodes).reverse();
  const weighings = reels.flatMap((item) => {
    const part = partOf(history, item);
    const attrition = history.plant.parts.find(({ number }) => number === part)?.attrition;
    if (part === null || attrition === undefined) return [];
    const counts = countsOf(history, item);
    return counts.flatMap((from, index): Weighing[] => {
      const to = counts[index + 1] ?? null;
      if (from.low > during.max || (to?.high ?? Infinity) < during.min) return [];
      const weighed = weighOne(drawnFrom(history, all, { item, from, to }), { from, to, attrition });
      return weighed === null ? [] : [{ item, part, from, to, ...weighed }];
    });
  });
  return { weighings, stays: seen };
}

/** Every event that says what is left of an item, and the splices at which it ran out, in order. */
function countsOf(history: History, item: string): Count[] {
  const counts: Count[] = [];
  for (const { event, key, doubtUs } of history.live) {
    if (event.type === 'item.spliced' && event.body.from === item) {
      const until = greyUntil(history, { event, key, doubtUs });
      if (until !== null && until < Infinity)
        counts.push({ id: key.id, us: until, low: until, high: until, left: 0, isFinal: false });
    }
    if (!event.type.startsWith('item.') || !('item' in event.body) || event.body.item !== item) continue;
    const left =
      'left' in event.body ? event.body.left : 'quantity' in event.body ? event.body.quantity : undefined;
    if (left === undefined) continue;
    counts.push({
      id: key.id,
      us: key.us,
      low: key.us - doubtUs,
      high: key.us + doubtUs,
      left,
      isFinal: event.type === 'item.retired',
    });
  }
  return counts.sort((a, b) => a.us - b.us || compareCodes(a.id, b.id));
}

type Period = { item: string; from: Count; to: Count | null };
type Use = { min: number; max: number };

/** Pieces that units drew from an item in a period: those that are sure, and all that are possible. */
function drawnFrom(history: History, stays: readonly ModelStay[], { item, from, to }: Period): Use {
  const end = to ?? { low: Infinity, high: Infinity };
  let [min, max] = [0, 0];
  const add = (pieces: number, isSure: boolean) => {
    if (isSure) min += pieces;
    // How many pieces somebody took without saying is not known.
    max += pieces > 0 ? pieces : Infinity;
  };
  for (const stay of stays) {
    const grey = stay.spliced?.greyUntil ?? null;
    const begin = Math.max(stay.fromLow, from.low);
    const passes = drawingPasses(history, stay.station, stay.slot);
    if (stay.item === item) {
      const sureFrom = Math.max(stay.fromHigh, grey ?? -Infinity, from.high);
      const last = Math.min(stay.toHigh, end.high);
      for (const { low, high, pieces } of begin < last ? passes : [])
        if (high >= begin && low < last) add(pieces, low >= sureFrom && high < Math.min(stay.toLow, end.low));
    }
    if (stay.spliced?.from === item && grey !== null) {
      const last = Math.min(grey, end.high);
      for (const { low, high, pieces } of begin < last ? passes : [])
        if (high >= begin && low < last) add(pieces, false);
    }
  }
  for (const { key, doubtUs, pieces } of takenByHand(history, item)) {
    const [low, high] = [key.us - doubtUs, key.us + doubtUs];
    if (high >= from.low && low < end.high) add(pieces, low >= from.high && high < end.low);
  }
  return { min, max };
}

/** Parts of an item that were scanned for a unit. */
function takenByHand(history: History, item: string) {
  const used = liveOf(history, 'unit.processed').flatMap(({ event, key, doubtUs }) =>
    (event.body.used ?? []).flatMap((each) =>
      each.item === item ? [{ key, doubtUs, pieces: each.quantity ?? (each.positions ?? []).length }] : [],
    ),
  );
  const installed = liveOf(history, 'part.installed').flatMap(({ event: { body }, key, doubtUs }) =>
    'item' in body && body.item === item ? [{ key, doubtUs, pieces: 1 }] : [],
  );
  const boards = liveOf(history, 'unit.started').flatMap(({ event, key, doubtUs }) =>
    event.body.boardLot === item ? [{ key, doubtUs, pieces: 1 }] : [],
  );
  return [...used, ...installed, ...boards];
}

/**
 * The counts say that `taken` pieces are gone. A deficit is more than all use and all allowed loss; a surplus is less than
 * the sure use, by more than the allowance. Since its last count an item can only have been emptied.
 */
function weighOne(
  { min, max }: Use,
  { from, to, attrition }: { from: Count; to: Count | null; attrition: number },
): Pick<Weighing, 'movedMin' | 'movedMax' | 'verdict'> | null {
  const taken = to !== null ? from.left - to.left : from.isFinal ? 0 : from.left;
  const isSurplus = max !== Infinity && min - taken > max * attrition + ROUNDING;
  const isDeficit = max !== Infinity && taken > max * (1 + attrition) + ROUNDING;
  if (to === null && !isSurplus) return null;
  return {
    movedMin: min - taken,
    movedMax: max - Math.max(0, taken) / (1 + attrition),
    verdict: isDeficit ? 'deficit' : isSurplus ? 'surplus' : 'agrees',
  };
}
