import type { Certainty } from '@/tests/reference/model/answer-types';
import type { Draw } from '@/tests/reference/model/draws';
import {
  type History,
  itemFacts,
  liveOf,
  plantProductOf,
  type Recorded,
} from '@/tests/reference/model/history';
import { compareKeys, instantUs } from '@/tests/reference/model/order';
import type { BomLine, EventOf } from '@/tests/reference/model/wire-types';

/** What the unit drew from the slots of the station at this pass. */
export function slotDraws(history: History, pass: Recorded<EventOf<'unit.processed'>>): Draw[] {
  const { unit } = pass.event.body;
  const station = pass.event.station;
  if (station === undefined) return [];
  const draws: Draw[] = [];
  for (const mount of liveOf(history, 'item.mounted')) {
    if (mount.event.station !== station) continue;
    const { item, slot } = mount.event.body;
    const lines = bomLinesOf(history, unit, station, slot);
    const facts = itemFacts(history, item);
    const holds = declaredHolds(history, station, slot) ?? facts?.kind ?? 'reel';
    if ((holds === 'reel' || holds === 'lot') && lines.length === 0) continue;
    const certainty = certaintyOf(pass, mount, endOf(history, mount));
    if (certainty === null) continue;
    draws.push({
      unit,
      item,
      kind: facts?.kind ?? holds,
      part: facts?.part ?? null,
      lot: facts?.lot ?? null,
      boardLot: null,
      positions: [...new Set(lines.flatMap((line) => line.positions))],
      station,
      slot,
      certainty,
      source: pass,
      heldFrom: pass.key,
      via: [],
    });
  }
  return draws;
}

function bomLinesOf(history: History, unit: string, station: string, slot: string): BomLine[] {
  const bom = plantProductOf(history, unit)?.bom ?? [];
  return bom.filter((line) => line.station === station && line.slot === slot);
}

function declaredHolds(history: History, station: string, slot: string): string | undefined {
  const declared = history.plant.stations.find((known) => known.code === station);
  return declared?.slots.find((known) => known.name === slot)?.holds;
}

type Mount = Recorded<EventOf<'item.mounted'>>;
type Ending = Recorded<EventOf<'item.mounted' | 'item.unmounted'>>;

/** The first later mount in that slot or unmount of that item from it; undefined while it stands there. */
function endOf(history: History, mount: Mount): Ending | undefined {
  const { item, slot } = mount.event.body;
  const later = [...liveOf(history, 'item.mounted'), ...liveOf(history, 'item.unmounted')]
    .filter(({ key }) => compareKeys(key, mount.key) > 0)
    .sort((left, right) => compareKeys(left.key, right.key));
  return later.find(
    ({ event }) =>
      event.station === mount.event.station &&
      event.body.slot === slot &&
      (event.type === 'item.mounted' || event.body.item === item),
  );
}

/** The certainty of wire.md for a span [a, b] and an interval [from, to); null is no draw. */
function certaintyOf(
  pass: Recorded<EventOf<'unit.processed'>>,
  mount: Mount,
  end: Ending | undefined,
): Certainty | null {
  const from = mount.key.us;
  const to = end?.key.us ?? Infinity;
  if (from >= to) return null;
  const startedAt = pass.event.body.startedAt;
  const a = startedAt === undefined ? pass.key.us : instantUs(startedAt);
  const b = pass.key.us;
  const u = pass.doubtUs;
  const f = mount.doubtUs;
  const g = end?.doubtUs ?? 0;
  if (a - u - f >= from && b + u + g < to) return 'certain';
  if (b + u + f >= from && a - u - g < to) return 'possible';
  return null;
}
