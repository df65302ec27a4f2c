import { findContainer } from '@/lib/data/packing/find-container';
import { findContents } from '@/lib/data/packing/find-contents';
import { findCustomers } from '@/lib/data/packing/find-customers';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { assembleKnown } from '@/lib/data/record/assemble-known';
import { openRecordCache } from '@/lib/data/record/record-cache';
import { onSnapshot } from '@/lib/data/transaction';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { judge } from '@/lib/domain/gate/judge';
import type { PackPicture } from '@/lib/domain/packing/pack-picture';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';

const CUSTOMERS_COUNT = 200;

/** A container with what is in it, and what the gate would say to shipping it now. */
export function readPack(container: string): Promise<PackPicture> {
  return onSnapshot(database().pool, async (db) => {
    const row = await findContainer(db, container);
    const contents = await findContents(db, container);
    const { plant } = await loadPlant(db);
    const event = shippingOf(container);
    const cache = openRecordCache(db);
    const known = await assembleKnown({ db, cache, plant, event, mode: 'enforce' });
    return {
      container,
      isKnown: row !== null,
      inside: row?.inside ?? null,
      shipment: row?.shipment ?? null,
      customer: row?.customer ?? null,
      destination: row?.destination ?? null,
      ...contents,
      customers: await findCustomers(db, CUSTOMERS_COUNT),
      blocked: row === null ? [] : judge(event, known),
    };
  });
}

function shippingOf(container: string): LoggedEvent {
  const atUs = Date.now() * 1000;
  return {
    // Ties go to the later id: a question comes after everything that happened at its moment.
    id: 'ffffffff-ffff-ffff-ffff-ffffffffffff',
    type: 'container.shipped',
    at: formatInstant(atUs),
    atUs,
    body: { container, shipment: '-', customer: '-' },
  };
}
