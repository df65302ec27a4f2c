import { findContainerRecord } from '@/lib/data/log/find-recorded-events';
import {
  countPacked,
  findAround,
  findCameBack,
  findContainer,
  findNested,
  findPackedUnits,
  findShippedContainers,
} from '@/lib/data/packing/find-packed';
import { findHolds } from '@/lib/data/trace/find-holds';
import { onSnapshot } from '@/lib/data/transaction';
import type { ContainerRecord, ShipmentRecord } from '@/lib/domain/packing/packing-record';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

const UNITS_MAX = 5000;

/** Everything that a container's page tells; null when nothing names it. */
export function readContainerRecord(container: string): Promise<ContainerRecord | null> {
  return onSnapshot(database().pool, async (client) => {
    const row = await findContainer(client, container);
    if (row === null) return null;
    const { own_shipment, own_customer, own_destination, own_shipped_at, shipment, customer } = row;
    const [own] = await countPacked(client, [container]);
    return {
      container,
      around: await findAround(client, container),
      shipped: shipment === null ? null : { shipment, customer: customer ?? '' },
      shipping:
        own_shipment === null || own_shipped_at === null
          ? null
          : {
              shipment: own_shipment,
              customer: own_customer ?? '',
              destination: own_destination,
              at: formatInstant(own_shipped_at),
            },
      containers: await countPacked(client, await findNested(client, container)),
      units: await findPackedUnits(client, [container], UNITS_MAX),
      unitCount: own?.units ?? 0,
      holds: await findHolds(client, 'container', container),
      history: await findContainerRecord(client, container),
    };
  });
}

/** Everything that a shipment's page tells; null when no container left with it. */
export function readShipmentRecord(shipment: string): Promise<ShipmentRecord | null> {
  return onSnapshot(database().pool, async (client) => {
    const shipped = await findShippedContainers(client, shipment);
    if (shipped.length === 0) return null;
    const codes = shipped.map(({ container }) => container);
    const counts = new Map(
      (await countPacked(client, codes)).map(({ container, units }) => [container, units]),
    );
    const units = await findPackedUnits(client, codes, UNITS_MAX);
    return {
      shipment,
      customers: [...new Set(shipped.map(({ customer }) => customer))],
      containers: shipped.map((row) => ({ ...row, units: counts.get(row.container) ?? 0 })),
      units,
      // A container and one around it may both have been shipped as this: a unit still counts once.
      unitCount: units.length < UNITS_MAX ? units.length : sumOf(counts.values()),
      cameBack: await findCameBack(client, codes),
    };
  });
}

function sumOf(counts: Iterable<number>): number {
  return [...counts].reduce((sum, count) => sum + count, 0);
}
