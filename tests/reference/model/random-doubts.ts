import { instantUs } from '@/tests/reference/model/order';
import { type Random, randomFrom } from '@/tests/reference/model/random';
import { randomDoubtMs, randomTimeText, randomUuidV7 } from '@/tests/reference/model/random-clock';
import type { RandomHistory } from '@/tests/reference/model/random-history';
import type { PlantFile, WireEvent } from '@/tests/reference/model/wire-types';

const BASE_US = Date.UTC(2026, 2, 2, 8) * 1000;
const ATTRITIONS = [0, 0.01, 0.1, 0.5];
const LEFT_MAX = 24;

/**
 * A history in which the record itself comes into doubt: reels are received with a quantity and counted, parts may lose
 * pieces, and devices scan at some stations and number what they send, of which some never arrives.
 */
export function withDoubts(seed: number, { plant, events }: RandomHistory): RandomHistory {
  const random = randomFrom(seed + 77_000);
  const scanners = plant.stations.map(({ code }) => ({ code, device: `tab-${code}` }));
  const scanned = random.chance(0.6) ? random.some(scanners, random.int(1, 2)) : [];
  const counted = [...events.map((event) => withLeft(random, event)), ...randomCounts(random, events)];
  return { plant: doubtfulPlant(random, plant, scanned), events: numbered(random, counted, scanned) };
}

type Scanner = { code: string; device: string };

function doubtfulPlant(random: Random, plant: PlantFile, scanned: readonly Scanner[]): PlantFile {
  const isWeighed = random.chance(0.9);
  return {
    ...plant,
    parts: plant.parts.map((part) =>
      isWeighed && random.chance(0.85) ? { ...part, attrition: random.pick(ATTRITIONS) } : part,
    ),
    stations: plant.stations.map((station) => {
      const devices = scanned.filter(({ code }) => code === station.code).map(({ device }) => device);
      return devices.length === 0 ? station : { ...station, scannedBy: devices };
    }),
  };
}

function withLeft(random: Random, event: WireEvent): WireEvent {
  switch (event.type) {
    case 'item.received':
      return random.chance(0.9)
        ? { ...event, body: { ...event.body, quantity: random.int(0, LEFT_MAX) } }
        : event;
    case 'item.unmounted':
      return random.chance(0.3)
        ? { ...event, body: { ...event.body, left: random.int(0, LEFT_MAX) } }
        : event;
    case 'item.retired':
      return random.chance(0.6)
        ? { ...event, body: { ...event.body, left: random.int(0, LEFT_MAX) } }
        : event;
    default:
      return event;
  }
}

/** Some counts of what was ever received, at the times of other events. */
function randomCounts(random: Random, events: readonly WireEvent[]): WireEvent[] {
  const items = events.flatMap((event) => (event.type === 'item.received' ? [event.body.item] : []));
  if (items.length === 0) return [];
  return Array.from({ length: Math.ceil(events.length / 10) }, () => ({
    id: randomUuidV7(random),
    at: randomTimeText(random, instantUs(random.pick(events).at) - BASE_US + random.pick([0, 1, 15_000_000])),
    gate: 'record' as const,
    type: 'item.counted' as const,
    ...(random.chance(0.3) ? { uncertaintyMs: randomDoubtMs(random) } : {}),
    body: { item: random.pick(items), quantity: random.int(0, LEFT_MAX), method: 'by hand' },
  }));
}

/** What devices sent, with its numbers; some of it never arrives. */
function numbered(random: Random, events: readonly WireEvent[], scanned: readonly Scanner[]): WireEvent[] {
  const next = new Map<string, number>();
  return events.flatMap((event): WireEvent[] => {
    const scanner = scanned.find(({ code }) => code === event.station);
    if (scanner === undefined || random.chance(0.3)) return [event];
    const deviceSeq = (next.get(scanner.device) ?? 0) + 1;
    next.set(scanner.device, deviceSeq);
    return random.chance(0.12) ? [] : [{ ...event, device: scanner.device, deviceSeq }];
  });
}
