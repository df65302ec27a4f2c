import type { EventOf } from '@/lib/domain/events/catalogue';
import type { Fault } from '@/scripts/demo/benches/outcome';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

type Body = EventOf<'unit.processed'>['body'];

/** What a station did to a board. */
export type Work = {
  unit: DemoUnit;
  station: string;
  /** What is wrong; null is a pass. */
  fault: Fault | null;
  /** Begin of the work, where the station tells it; milliseconds since the epoch. */
  startedMs?: number;
  used?: Body['used'];
  readings?: Body['readings'];
};

/** Writes the result of a station, now; returns the event's id. */
export function writeResult({ journal, roster }: World, work: Work): string {
  const { unit, station, fault, startedMs, used, readings } = work;
  return journal.write({
    type: 'unit.processed',
    station,
    operator: roster.operatorAt(station),
    ...(unit.isRecordedOnly ? { gate: 'record' } : {}),
    body: {
      unit: unit.serial,
      result: fault === null ? 'pass' : 'fail',
      ...(startedMs === undefined ? {} : { startedAt: journal.timeAt(startedMs) }),
      ...(used === undefined ? {} : { used }),
      ...(readings === undefined ? {} : { readings }),
      ...(fault === null ? {} : { defects: [defectOf(fault)] }),
    },
  });
}

function defectOf({ code, position, note }: Fault) {
  return { code, position, ...(note === undefined ? {} : { note }) };
}
