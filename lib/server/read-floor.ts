import { countPlaces } from '@/lib/data/floor/count-places';
import { countStationWork, type StationHour } from '@/lib/data/floor/count-station-work';
import { countWaiting, type Waiting } from '@/lib/data/floor/count-waiting';
import { findLastWork, type LastWork } from '@/lib/data/floor/find-last-work';
import { findOpenHolds } from '@/lib/data/floor/find-open-holds';
import { findSlotContents, type SlotContent } from '@/lib/data/floor/find-slot-contents';
import { findStuckUnits, type StuckUnit } from '@/lib/data/floor/find-stuck-units';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { onSnapshot } from '@/lib/data/transaction';
import { holdTargetKindSchema } from '@/lib/domain/events/vocabulary';
import type { FloorPicture, LinePicture, StationPicture } from '@/lib/domain/floor/floor-picture';
import { neededSlots } from '@/lib/domain/floor/needed-slots';
import { type LineOrder, orderStations } from '@/lib/domain/floor/order-stations';
import { type Plant, routeOf } from '@/lib/domain/plant/plant';
import type { StationEntry } from '@/lib/domain/plant/plant-file';
import { instantOf } from '@/lib/domain/time';
import { database } from '@/lib/server/database';
import { remember } from '@/lib/server/remember';

const HOUR_MS = 3_600_000;
const HOURS_SHOWN = 24;
const STUCK_MAX = 9;
const HOLDS_MAX = 6;
const PICTURE_AGE_MS = 3000;
const PLACES_AGE_MS = 30_000;

/** The floor as it stands: what runs, what is stuck, what is held; at most some seconds old, however many screens ask. */
export const readFloor = remember(takePicture, PICTURE_AGE_MS);

const readPlaces = remember(() => countPlaces(database().pool), PLACES_AGE_MS);

async function takePicture(): Promise<FloorPicture> {
  const places = await readPlaces();
  return onSnapshot(database().pool, async (client) => {
    const at = Date.now();
    const { plant } = await loadPlant(client);
    const lines = orderStations(plant.file);
    const stations = lines.flatMap((line) => line.stations.map(({ code }) => code));
    const found: Found = {
      at,
      plant,
      hours: await countStationWork(client, startOfHour(at - (HOURS_SHOWN - 1) * HOUR_MS) * 1000),
      recent: await countStationWork(client, (at - HOUR_MS) * 1000),
      last: new Map((await findLastWork(client, stations)).map((row) => [row.station, row])),
      waiting: new Map((await countWaiting(client)).map((row) => [row.station, row])),
      contents: await findSlotContents(client),
    };
    const holds = await findOpenHolds(client, HOLDS_MAX);
    const stuck = await findStuckUnits(client, STUCK_MAX);
    const { owing, lost } = await findCompleteness(client);
    const operations = new Set(plant.file.products?.flatMap(routeOf).map((step) => step.operation));
    const isShown = ({ code, operation }: StationEntry) => operations.has(operation) || found.last.has(code);
    const shown = lines.map((line) => ({ ...line, stations: line.stations.filter(isShown) }));
    return {
      at,
      lines: shown.flatMap((line) => (line.stations.length === 0 ? [] : [pictureOfLine(line, found)])),
      others: lines.flatMap((line) => line.stations.filter((each) => !isShown(each)).map(({ code }) => code)),
      places,
      devices: { owing: owing.length, lost: lost.length },
      holds: {
        open: holds.open,
        newest: holds.newest.map(({ hold, kind, id, reason, at: placedAt }) => {
          const target = holdTargetKindSchema.parse(kind);
          return { hold, kind: target, id, reason, at: instantOf(placedAt) / 1000 };
        }),
      },
      stuck: stuck.map(pictureOfStuck),
    };
  });
}

type Found = {
  at: number;
  plant: Plant;
  hours: StationHour[];
  recent: StationHour[];
  last: Map<string, LastWork>;
  waiting: Map<string, Waiting>;
  contents: SlotContent[];
};

function pictureOfLine({ line, stations }: LineOrder, found: Found): LinePicture {
  const pictures = stations.map((station) => pictureOfStation(station, found));
  const worked = new Set(found.hours.map((hour) => hour.station));
  const hoursOf = stations.findLast(({ code }) => worked.has(code))?.code ?? null;
  const products = pictures.flatMap(({ state, last }) =>
    last === null || last.product === null || state === 'idle' ? [] : [last.product],
  );
  return {
    line,
    products: [...new Set(products)],
    stations: pictures,
    hours: hoursOf === null ? [] : hoursOfStation(hoursOf, found),
    hoursOf,
  };
}

function hoursOfStation(station: string, { at, hours }: Found): LinePicture['hours'] {
  const byHour = new Map(
    hours.flatMap((hour) => (hour.station === station ? [[hour.hourUs / 1000, hour] as const] : [])),
  );
  return Array.from({ length: HOURS_SHOWN }, (_, index) => {
    const hourAt = startOfHour(at) - (HOURS_SHOWN - 1 - index) * HOUR_MS;
    const { passed = 0, failed = 0 } = byHour.get(hourAt) ?? {};
    return { at: hourAt, passed, failed };
  });
}

function pictureOfStation(station: StationEntry, found: Found): StationPicture {
  const { code, operation } = station;
  const recent = found.recent.filter((row) => row.station === code);
  const last = found.last.get(code) ?? null;
  const waiting = found.waiting.get(code);
  const slots = slotsOf(station, last, found);
  return {
    station: code,
    operation,
    state: stateOf(slots, recent.length > 0),
    slots,
    lastHour: {
      passed: recent.reduce((sum, hour) => sum + hour.passed, 0),
      failed: recent.reduce((sum, hour) => sum + hour.failed, 0),
    },
    last: last && {
      unit: last.unit,
      product: nameOf(last),
      result: last.result,
      at: last.at / 1000,
    },
    waiting: {
      units: waiting?.units ?? 0,
      failed: waiting?.failed ?? 0,
      held: waiting?.held ?? 0,
      longestSince: waiting?.longestSinceUs == null ? null : waiting.longestSinceUs / 1000,
    },
  };
}

/** Slots with what is in them; an empty one is `missing` when the product that came last draws from it. */
function slotsOf(
  station: StationEntry,
  last: LastWork | null,
  { plant, contents }: Found,
): StationPicture['slots'] {
  const filled = new Map(
    contents.flatMap((row) => (row.station === station.code ? [[row.slot, row] as const] : [])),
  );
  const product = last === null ? null : plant.product(last.product, last.revision);
  const needed = neededSlots(plant, station, product);
  return (station.slots ?? []).map(({ name }) => {
    const content = filled.get(name);
    if (content !== undefined) return { slot: name, content: content.isHeld ? 'held' : 'filled' };
    return { slot: name, content: needed.has(name) ? 'missing' : 'empty' };
  });
}

function stateOf(slots: StationPicture['slots'], isRunning: boolean): StationPicture['state'] {
  if (slots.some(({ content }) => content === 'held')) return 'held';
  if (slots.some(({ content }) => content === 'missing')) return 'missing';
  return isRunning ? 'running' : 'idle';
}

function pictureOfStuck({ sinceUs, revision, ...unit }: StuckUnit): FloorPicture['stuck'][number] {
  return { ...unit, product: nameOf({ product: unit.product, revision }), since: sinceUs / 1000 };
}

function nameOf({ product, revision }: { product: string | null; revision: string | null }): string | null {
  return product === null ? null : `${product} ${revision ?? ''}`.trim();
}

function startOfHour(ms: number): number {
  return Math.floor(ms / HOUR_MS) * HOUR_MS;
}
