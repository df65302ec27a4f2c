import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { EVENT_TYPES, eventSchema, type WireEvent } from '@/lib/domain/events/catalogue';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { indexPlant } from '@/lib/domain/plant/plant';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import { plantWarnings } from '@/lib/domain/plant/plant-warnings';
import { openFailure } from '@/lib/domain/units/progress';
import { planDemo } from '@/scripts/demo/plan-demo';
import { endOfDemoBegunAt, endOfDemoLoadedAt } from '@/scripts/demo/simulation/calendar';
import { lastEventId } from '@/scripts/demo/simulation/event-id';
import { InMemoryRecord } from '@/tests/support/in-memory-record';

const ENDS_AT = '2026-03-20T18:00:00.000Z';
const plan = planDemo(ENDS_AT);
const plant = indexPlant(plan.plant);

describe('the demo plan', () => {
  it('is the same, byte for byte, for the same day', () => {
    expect(hashOf(planDemo(ENDS_AT).events)).toBe(hashOf(plan.events));
  });

  it('goes the same way on whatever weekday it ends', () => {
    const onSunday = planDemo('2026-03-22T11:30:00.000Z');
    expect(onSunday.events.map(withoutTime)).toEqual(plan.events.map(withoutTime));
  });

  it('ends on the day that its first and last events tell', () => {
    const [first, last] = [plan.events[0], plan.events.at(-1)];
    expect(endOfDemoBegunAt(first?.at ?? '')).toBe(ENDS_AT);
    expect(last?.at).toBe('2026-03-20T18:00:00.000Z');
    expect(last?.id).toBe(lastEventId(Date.parse('2026-03-20T18:00:00Z')));
    expect(endOfDemoLoadedAt(Date.parse('2026-03-20T18:00:59Z'))).toBe(ENDS_AT);
  });

  it('has a plant file without faults: two lines and over 60 parts', () => {
    expect(plantFileSchema.safeParse(plan.plant).success).toBe(true);
    expect(plantWarnings(plant)).toEqual([]);
    expect(plan.plant.parts?.length).toBeGreaterThan(60);
    const lines = plan.plant.stations
      ?.filter(({ operation }) => operation === 'print')
      .map(({ line }) => line);
    expect(lines).toEqual(['L1', 'L2']);
  });

  it('has well-formed events of every type, in order, with ids of their own', () => {
    const malformed = plan.events.filter((event) => !eventSchema.safeParse(event).success);
    expect(malformed).toEqual([]);
    // A lost device would leave every answer of the demo incomplete for good.
    const wanted = EVENT_TYPES.filter((type) => type !== 'device.retired');
    expect(new Set(plan.events.map(({ type }) => type))).toEqual(new Set(wanted));
    expect(new Set(plan.events.map(({ id }) => id)).size).toBe(plan.events.length);
    const keys = plan.events.map(({ at, id }) => `${at} ${id}`);
    expect(keys).toEqual([...keys].sort());
    expect(plan.events.length).toBeGreaterThan(80_000);
    expect(plan.events.length).toBeLessThan(100_000);
  });

  it('numbers the events of each tablet from 1 without a gap', () => {
    const last = new Map<string, number>();
    for (const { device, deviceSeq } of plan.events) {
      if (device === undefined) continue;
      expect(deviceSeq).toBe((last.get(device) ?? 0) + 1);
      last.set(device, deviceSeq ?? 0);
    }
    expect(last.size).toBeGreaterThan(5);
  });

  it('passes the gate in its own order, but for the attempts that must be refused', {
    timeout: 60_000,
  }, () => {
    const { record, surprises, flagged } = sendThroughGate();
    expect(surprises).toEqual([]);
    expect(flagged).toBeGreaterThan(40);
    expectFloorIsAlive(record);
  });
});

function sendThroughGate() {
  const record = new InMemoryRecord(plant);
  const surprises: { event: WireEvent; reasons: Refusal[] }[] = [];
  let flagged = 0;
  for (const event of plan.events) {
    const reasons = record.append(event);
    if (event.gate === 'record') flagged += reasons.length > 0 ? 1 : 0;
    else if (reasons[0]?.code !== plan.expectedRefusals.get(event.id)) surprises.push({ event, reasons });
  }
  return { record, surprises: surprises.slice(0, 5), flagged };
}

function expectFloorIsAlive(record: InMemoryRecord): void {
  const units = [...record.units].map(([unit, state]) => ({ unit, state }));
  const gateways = units.filter(({ state }) => state.product === 'WX4');
  const isShipped = ({ unit }: { unit: string }) => record.shipmentOf(unit) !== null;
  expect(gateways.filter(isShipped).length).toBeGreaterThanOrEqual(3000);
  const working = units.filter(({ state }) => state.placing === 'station' && !state.isScrapped);
  expect(new Set(working.map(({ state }) => state.lastStation)).size).toBeGreaterThan(12);
  expect(working.filter(({ state }) => openFailure(state, plant) !== null).length).toBeGreaterThanOrEqual(3);
  expect(record.openHolds.filter(({ kind }) => kind === 'unit').length).toBeGreaterThan(8);
  expect(units.filter(({ state }) => state.isScrapped).length).toBeGreaterThan(10);
}

function withoutTime({ type, station, operator, body }: WireEvent): string {
  const { startedAt, hold, event, ...facts }: Record<string, unknown> = { ...body };
  return JSON.stringify([type, station, operator, facts]);
}

function hashOf(events: readonly WireEvent[]): string {
  return createHash('sha256').update(JSON.stringify(events)).digest('hex');
}
