import { type During, type Weighing, weigh } from '@/tests/reference/model/counts';
import { type History, itemFacts } from '@/tests/reference/model/history';
import { compareCodes } from '@/tests/reference/model/order';
import { drawingPasses, type ModelStay, modelStays, partOf } from '@/tests/reference/model/stays';

/** A time at a slot, both ends included, in which units may have drawn from any of some items. */
export type ModelWindow = { station: string; slot: string; low: number; high: number; items: string[] };

/** The windows in which units may have drawn from some items: by counts that disagree, and by what devices owe. */
export function doubtWindows(history: History, items: readonly string[]): ModelWindow[] {
  return [...countWindows(history, items), ...gapWindows(history)].filter(names(items));
}

/** The windows in which it is in doubt what units drew that some items stood beside; a gap may name any other. */
export function windowsAround(history: History, items: readonly string[]): ModelWindow[] {
  return [...countWindows(history, items).filter(names(items)), ...gapWindows(history)];
}

function names(items: readonly string[]) {
  return (window: ModelWindow) => window.items.some((item) => items.includes(item));
}

/** A part of a stay in which another item may have been in the slot; `other` null: nobody knows which. */
type Suspect = {
  stay: ModelStay;
  part: 'last' | 'first' | 'whole';
  other: string | null;
  pieces: number;
  between: During;
  speaking: Weighing[];
};

function countWindows(history: History, items: readonly string[]): ModelWindow[] {
  const wrong = weigh(history, items).weighings.filter(({ verdict }) => verdict !== 'agrees');
  if (wrong.length === 0) return [];
  const parts = new Set(wrong.map(({ part }) => part));
  const reels = new Set(items);
  for (const { event } of history.live)
    if (event.type === 'item.received') {
      const { item } = event.body;
      const part = partOf(history, item);
      if (part !== null && parts.has(part)) reels.add(item);
    }
  const during = {
    min: Math.min(...wrong.map(({ from }) => from.low)),
    max: Math.max(...wrong.map(({ to }) => to?.high ?? Infinity)),
  };
  const { weighings, stays } = weigh(history, [...reels], during);
  return suspectsOf(weighings, stays).flatMap((suspect) => windowOf(history, suspect));
}

function suspectsOf(weighings: readonly Weighing[], stays: readonly ModelStay[]): Suspect[] {
  const beside = stays.flatMap((after, index) => {
    const before = stays[index - 1];
    if (before === undefined || before.station !== after.station || before.slot !== after.slot) return [];
    return before.item === after.item ? [] : atChange(weighings, before, after);
  });
  const provenOf = (weighing: Weighing) =>
    beside.filter(
      ({ speaking }) =>
        speaking.includes(weighing) &&
        speaking.some(({ verdict }) => verdict !== 'agrees' && verdict !== weighing.verdict),
    );
  const explains = (suspects: readonly Suspect[], { verdict, movedMin, movedMax }: Weighing) => {
    let pieces = 0;
    for (const suspect of suspects) pieces += suspect.pieces;
    return pieces >= (verdict === 'surplus' ? movedMin : -movedMax);
  };
  const wrong = weighings.filter(({ verdict }) => verdict !== 'agrees');
  const open = wrong.filter((weighing) => !explains(provenOf(weighing), weighing));
  const far = open.flatMap((surplus) => open.flatMap((deficit) => elsewhere(stays, surplus, deficit)));
  const found: Suspect[] = [];
  for (const weighing of wrong) {
    const proven = provenOf(weighing);
    if (explains(proven, weighing)) {
      found.push(...proven);
      continue;
    }
    const near = beside.filter(
      ({ speaking, stay, other }) =>
        speaking.includes(weighing) && (weighing.verdict === 'surplus' ? stay.item : other) === weighing.item,
    );
    const own = far.filter(({ speaking }) => speaking.includes(weighing));
    if (own.length > 0)
      found.push(...proven, ...own, ...near.filter(({ speaking }) => speaking.length === 1));
    else if (explains(near, weighing)) found.push(...near);
    else if (weighing.verdict === 'deficit') found.push(...proven);
    else found.push(...near, ...fromNowhere(stays, weighing));
  }
  return found;
}

/** The next item was scanned too late, or too early. */
function atChange(weighings: readonly Weighing[], before: ModelStay, after: ModelStay): Suspect[] {
  const left = weighings.find(
    ({ item, from, to }) => item === before.item && from.us < before.to && before.to <= (to?.us ?? Infinity),
  );
  const came = weighings.find(
    ({ item, from, to }) => item === after.item && from.us <= after.from && after.from < (to?.us ?? Infinity),
  );
  const speaking = [left, came].filter((each) => each !== undefined);
  const late = Math.min(spare(left), lacking(came));
  const early = Math.min(spare(came), lacking(left));
  const suspects: Suspect[] = [
    { stay: before, part: 'last', other: after.item, pieces: late, between: within(before, left), speaking },
    { stay: after, part: 'first', other: before.item, pieces: early, between: within(after, came), speaking },
  ];
  return suspects.filter(({ pieces }) => pieces > 0 && pieces < Infinity);
}

/** Pieces recorded on an item that another one can have given. */
function spare(weighing: Weighing | undefined): number {
  return weighing === undefined ? Infinity : Math.max(0, weighing.movedMax);
}

/** Pieces that an item can have given to units recorded on another one. */
function lacking(weighing: Weighing | undefined): number {
  return weighing === undefined ? Infinity : Math.max(0, -weighing.movedMin);
}

/** An item of the part that lost pieces stood, without a scan, where one has too many. */
function elsewhere(stays: readonly ModelStay[], surplus: Weighing, deficit: Weighing): Suspect[] {
  if (surplus.verdict !== 'surplus' || deficit.verdict !== 'deficit') return [];
  if (surplus.part !== deficit.part || surplus.item === deficit.item) return [];
  if (surplus.movedMax < -deficit.movedMax || -deficit.movedMin < surplus.movedMin) return [];
  return staysIn(stays, surplus).flatMap((stay): Suspect[] => {
    const own = within(stay, surplus);
    const between = {
      min: Math.max(own.min, deficit.from.low),
      max: Math.min(own.max, deficit.to?.high ?? Infinity),
    };
    if (between.min > between.max) return [];
    const pieces = Math.min(spare(surplus), lacking(deficit));
    return [{ stay, part: 'whole', other: deficit.item, pieces, between, speaking: [surplus, deficit] }];
  });
}

function fromNowhere(stays: readonly ModelStay[], surplus: Weighing): Suspect[] {
  return staysIn(stays, surplus).map((stay) => ({
    stay,
    part: 'whole',
    other: null,
    pieces: spare(surplus),
    between: within(stay, surplus),
    speaking: [surplus],
  }));
}

function staysIn(stays: readonly ModelStay[], { item, from, to }: Weighing): ModelStay[] {
  return stays.filter((stay) => stay.item === item && stay.from < (to?.us ?? Infinity) && stay.to > from.us);
}

function within(stay: ModelStay, weighing: Weighing | undefined): During {
  if (weighing === undefined) return { min: stay.from, max: stay.to };
  return {
    min: Math.max(stay.from, weighing.from.low),
    max: Math.min(stay.to, weighing.to?.high ?? Infinity),
  };
}

/** From the first to the last of the passes that are suspected, as many as the pieces reach. */
function windowOf(history: History, { stay, part, other, pieces, between }: Suspect): ModelWindow[] {
  const grey = stay.spliced?.greyUntil ?? -Infinity;
  const passes = drawingPasses(history, stay.station, stay.slot)
    .filter(({ low, high }) => high >= stay.fromLow && low < stay.toHigh)
    .filter(({ low, high }) => high >= between.min && low <= between.max)
    .map((pass) => ({
      ...pass,
      isSure: pass.low >= Math.max(stay.fromHigh, grey) && pass.high < stay.toLow,
    }))
    .sort((a, b) => a.low - b.low || a.high - b.high || compareCodes(a.unit, b.unit));
  if (part === 'first') passes.sort((a, b) => a.low - b.low);
  if (part === 'last') passes.sort((a, b) => b.high - a.high);
  let reached = 0;
  const suspected = passes.filter((pass) => {
    if (part !== 'whole' && reached >= pieces) return false;
    if (pass.isSure) reached += pass.pieces;
    return true;
  });
  if (suspected.length === 0) return [];
  return [
    {
      station: stay.station,
      slot: stay.slot,
      low: Math.max(stay.from, Math.min(...suspected.map(({ low }) => low))),
      high: Math.min(stay.to - 1, Math.max(...suspected.map(({ high }) => high))),
      items: other === null ? [stay.item] : [stay.item, other],
    },
  ];
}

/**
 * While a device owes events, what stood before, then or after at a slot of the stations where it scans may have stood
 * there. The gap lies between the events with the numbers around it, whenever they happened.
 */
function gapWindows(history: History): ModelWindow[] {
  const stays = modelStays(history);
  return history.plant.stations.flatMap(({ code, scannedBy = [] }) =>
    scannedBy.flatMap((device) =>
      owedTimes(history, device).flatMap((owed) =>
        placesAt(stays.filter(({ station }) => station === code)).flatMap(({ from, to, ...place }) => {
          const [low, high] = [Math.max(from, owed.min), Math.min(to - 1, owed.max)];
          return low > high ? [] : [{ ...place, low, high }];
        }),
      ),
    ),
  );
}

function owedTimes(history: History, device: string): During[] {
  const arrived = history.arrived.filter(({ event }) => event.device === device);
  const numbers = new Set(arrived.map(({ event }) => event.deviceSeq ?? 0));
  const times: During[] = [];
  for (let number = 1; number < Math.max(0, ...numbers); number += 1) {
    if (numbers.has(number) || (number > 1 && !numbers.has(number - 1))) continue;
    let next = number;
    while (!numbers.has(next)) next += 1;
    const before = arrived.filter(({ event }) => event.deviceSeq === number - 1);
    const after = arrived.filter(({ event }) => event.deviceSeq === next);
    times.push({
      min: before.length === 0 ? 0 : Math.min(...before.map(({ key, doubtUs }) => key.us - doubtUs)),
      max: Math.max(...after.map(({ key, doubtUs }) => key.us + doubtUs)),
    });
  }
  return times;
}

/** The slots of a station, cut where what stands there changes, each time with all that it may have been. */
function placesAt(stays: readonly ModelStay[]) {
  return [...new Set(stays.map(({ slot }) => slot))].flatMap((slot) => {
    const own = stays.filter((stay) => stay.slot === slot);
    return own.flatMap((stay, index) => {
      const { station } = stay;
      const [before, after] = [own[index - 1], own[index + 1]];
      const around = [stay, before, after].flatMap((each) => (each === undefined ? [] : [each.item]));
      const items = [...new Set(around)];
      const empty = {
        station,
        slot,
        from: before?.to ?? -Infinity,
        to: stay.from,
        items: [...new Set([...(before === undefined ? [] : [before.item]), stay.item])],
      };
      const rest = { station, slot, from: stay.to, to: Infinity, items: [stay.item] };
      const filled = { station, slot, from: stay.from, to: stay.to, items };
      return [
        ...(empty.from < empty.to ? [empty] : []),
        filled,
        ...(after === undefined && stay.to < Infinity ? [rest] : []),
      ];
    });
  });
}

/** The items that a question for a lot or a part is about, as they are known. */
export function itemsOf(history: History, wanted: { lot?: string; part?: string }): string[] {
  const items = new Set<string>();
  for (const { event } of history.live)
    if (event.type === 'item.received') {
      const facts = itemFacts(history, event.body.item);
      const isWanted =
        (wanted.lot === undefined || facts?.lot === wanted.lot) &&
        (wanted.part === undefined || facts?.part === wanted.part);
      if (isWanted) items.add(event.body.item);
    }
  return [...items];
}
