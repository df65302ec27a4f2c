import type { ItemKind } from '@/lib/domain/events/vocabulary';
import { CARRIERS } from '@/scripts/demo/benches/board-benches';
import type { Floor } from '@/scripts/demo/floor';
import { profileFor } from '@/scripts/demo/line/reflow-oven';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { WORN_STENCIL } from '@/scripts/demo/stories';

type Tool = readonly [item: string, kind: ItemKind];
type Mount = readonly [station: string, slot: string, item: string];

const TOOLS: readonly Tool[] = [
  [WORN_STENCIL.stencil, 'stencil'],
  [WORN_STENCIL.successor, 'stencil'],
  ['ST-WX4-02', 'stencil'],
  ['ST-PSU2-01', 'stencil'],
  ...(['SQ-350-1', 'SQ-350-2', 'SQ-350-3', 'SQ-350-4'] as const).map((item): Tool => [item, 'squeegee']),
  [profileFor('L1', 'WX4'), 'profile'],
  [profileFor('L2', 'WX4'), 'profile'],
  [profileFor('L2', 'PSU2'), 'profile'],
  ['PROF-WAVE-3', 'profile'],
  ['FIX-WX4-1', 'fixture'],
  ['FIX-WX4-2', 'fixture'],
  ['FIX-PSU2-1', 'fixture'],
  ['TP-WX4-2.3', 'firmware'],
  ['TP-WX4-2.4', 'firmware'],
  ['TP-PSU2-1.7', 'firmware'],
  ['FW-WX4-1.8.0', 'firmware'],
  ['FW-WX4-1.8.1', 'firmware'],
  ...CARRIERS.map((item): Tool => [item, 'carrier']),
];

const FIRST_MOUNTS: readonly Mount[] = [
  ['L1-PRINT', 'squeegee', 'SQ-350-1'],
  ['L2-PRINT', 'squeegee', 'SQ-350-2'],
  ['WAVE-1', 'profile', 'PROF-WAVE-3'],
  ['FT-1', 'fixture', 'FIX-WX4-1'],
  ['FT-2', 'fixture', 'FIX-WX4-2'],
  ['PT-1', 'fixture', 'FIX-PSU2-1'],
  ['FT-1', 'program', 'TP-WX4-2.3'],
  ['FT-2', 'program', 'TP-WX4-2.3'],
  ['PT-1', 'program', 'TP-PSU2-1.7'],
  ['FW-1', 'image', 'FW-WX4-1.8.0'],
];

/** Tools are booked in on the first day, mounted before the first shift, and changed as the weeks go. */
export function scheduleToolRoom({ world }: Floor): void {
  const { agenda, calendar, journal, roster } = world;
  TOOLS.forEach(([item, kind], index) => {
    agenda.at(calendar.firstMs + 4.5 * 3_600_000 + index * 20_000, () =>
      journal.write({
        type: 'item.received',
        station: 'GOODS-IN',
        operator: roster.onDuty('handler'),
        body: { item, kind },
      }),
    );
  });
  const mount = ([station, slot, item]: Mount) =>
    journal.write({
      type: 'item.mounted',
      station,
      operator: roster.onDuty('handler', station),
      body: { item, slot },
    });
  FIRST_MOUNTS.forEach((row, index) => {
    agenda.at(onWorkday(calendar, 0, 5, 30) + index * 45_000, () => mount(row));
  });
  agenda.at(onWorkday(calendar, 7, 5, 50), () => mount(['L1-PRINT', 'squeegee', 'SQ-350-3']));
  agenda.at(onWorkday(calendar, 7, 5, 55), () => mount(['L2-PRINT', 'squeegee', 'SQ-350-4']));
  agenda.at(onWorkday(calendar, 9, 12), () => mount(['FT-1', 'program', 'TP-WX4-2.4']));
  agenda.at(onWorkday(calendar, 9, 12, 8), () => mount(['FT-2', 'program', 'TP-WX4-2.4']));
  agenda.at(onWorkday(calendar, 11, 6), () => mount(['FW-1', 'image', 'FW-WX4-1.8.1']));
}
