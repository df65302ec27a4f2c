import { type Outcome, outcomeOf } from '@/scripts/demo/benches/outcome';
import { writeResult } from '@/scripts/demo/benches/write-result';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

/**
 * Measures the paste on boards, now; boards that fail are looked at and wiped at the machine and measured again, until
 * all have passed.
 */
export function inspectPaste(
  world: World,
  work: { line: LineCode; units: readonly DemoUnit[]; passed: () => void },
): void {
  const { line, units, passed } = work;
  const failed = units.filter((unit) => {
    const fails = unit.tries.get('spi') ?? 0;
    const fault = fails >= 2 ? null : outcomeOf(world, unit, 'spi');
    writeResult(world, { unit, station: `${line}-SPI`, fault, readings: [pasteVolume(world, unit, fault)] });
    if (fault === null) unit.tries.delete('spi');
    else unit.tries.set('spi', fails + 1);
    return fault !== null;
  });
  if (failed.length === 0) passed();
  else
    world.agenda.after(world.random.between(120_000, 240_000), () =>
      inspectPaste(world, { line, units: failed, passed }),
    );
}

/** Mean volume of paste, in per cent of the stencil's opening; it sinks as the stencil wears. */
function pasteVolume({ random }: World, unit: DemoUnit, fault: Outcome) {
  const mean = 99 - 21 * unit.stencilWear;
  const isLow = fault?.code === 'LOW-PASTE';
  const value = isLow ? random.between(48, 59) : Math.max(61, mean + random.between(-9, 9));
  return { name: 'paste-volume', value: Math.round(value), unit: '%', low: 60, high: 140 };
}
