import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { RefusalCode } from '@/lib/domain/gate/refusals';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { buildFloor, type Floor } from '@/scripts/demo/floor';
import { scheduleCrackedReel } from '@/scripts/demo/incidents/cracked-reel';
import { scheduleEverydayHolds } from '@/scripts/demo/incidents/everyday-holds';
import { scheduleFieldReturns } from '@/scripts/demo/incidents/field-returns';
import { scheduleLateScan } from '@/scripts/demo/incidents/late-scan';
import { scheduleSlips } from '@/scripts/demo/incidents/slips';
import { scheduleToolRoom } from '@/scripts/demo/incidents/tool-room';
import { scheduleWornStencil } from '@/scripts/demo/incidents/worn-stencil';
import { scheduleWrongReel } from '@/scripts/demo/incidents/wrong-reel';
import { DAY_PLAN } from '@/scripts/demo/line/day-plan';
import { scheduleDeliveries } from '@/scripts/demo/material/deliveries';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { lastEventId } from '@/scripts/demo/simulation/event-id';
import { openWorld } from '@/scripts/demo/simulation/world';
import { CRACKED_REEL } from '@/scripts/demo/stories';

/** Three weeks of an invented plant, ready to be sent through the gate in this order. */
export type DemoPlan = {
  /** When the three weeks end (RFC 3339). */
  endsAt: string;
  plant: PlantFile;
  events: readonly WireEvent[];
  /** Events that the gate is to refuse, with the first reason it gives. */
  expectedRefusals: ReadonlyMap<string, RefusalCode>;
};

const SEED = 20_260_302;

/** Simulates the three weeks that end at a moment (RFC 3339): the same moment gives the same events, byte for byte. */
export function planDemo(endsAt: string): DemoPlan {
  const world = openWorld({ endsAt, seed: SEED });
  const { agenda, calendar, journal, plant, roster } = world;
  const floor = buildFloor(world);
  scheduleDeliveries(world);
  floor.bench.schedule();
  scheduleToolRoom(floor);
  floor.starts.schedule();
  floor.packing.shipping.schedule();
  scheduleDryStore(floor);
  scheduleCrackedReel(floor);
  scheduleWornStencil(floor);
  scheduleWrongReel(floor);
  scheduleLateScan(floor);
  scheduleFieldReturns(floor);
  scheduleEverydayHolds(floor);
  scheduleSlips(floor);
  agenda.runUntil(calendar.endMs);
  journal.writeLast(
    {
      type: 'item.counted',
      station: 'GOODS-IN',
      operator: roster.onDuty('handler'),
      body: { item: CRACKED_REEL.siblingReel, quantity: 500, method: 'x-ray' },
    },
    lastEventId(calendar.endMs),
  );
  const { events, expectedRefusals } = journal;
  return { endsAt, plant: plant.file, events, expectedRefusals };
}

/** While line 2 builds power supplies, the moisture-sensitive reels of its second machine go back to the dry store. */
function scheduleDryStore({ world, lines }: Floor): void {
  const { agenda, calendar } = world;
  const supplies = DAY_PLAN.find(({ line, product }) => line === 'L2' && product === 'PSU2');
  const hours = supplies?.fromHours ?? 0;
  calendar.workdays.forEach((_, index) => {
    agenda.at(onWorkday(calendar, index, hours, 20), () => lines.L2.returnMoistureSensitive());
  });
}
