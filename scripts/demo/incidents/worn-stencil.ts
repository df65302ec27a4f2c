import type { Floor } from '@/scripts/demo/floor';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { WORN_STENCIL } from '@/scripts/demo/stories';

/** Story (b): the stencil of line 1 is inspected twice, then forgotten until paste defects bring somebody to look. */
export function scheduleWornStencil({ world, lines }: Floor): void {
  const { agenda, calendar, journal, roster } = world;
  const { printer } = lines.L1;
  agenda.at(onWorkday(calendar, 1, 12, 10), () => printer.inspect('WX4'));
  agenda.at(onWorkday(calendar, 4, 12, 15), () => printer.inspect('WX4'));
  agenda.at(onWorkday(calendar, 11, 13, 5), () => {
    printer.inspect('WX4');
    printer.replaceStencil('WX4', { item: WORN_STENCIL.successor, prints: 0 });
  });
  agenda.at(onWorkday(calendar, 11, 13, 9), () =>
    journal.write({
      type: 'item.retired',
      operator: roster.onDuty('handler', WORN_STENCIL.station),
      body: { item: WORN_STENCIL.stencil, reason: 'Worn: far more prints than the limit.' },
    }),
  );
}
