import type { WireEvent } from '@/lib/domain/events/catalogue';
import { judge } from '@/lib/domain/gate/judge';
import type { Known } from '@/lib/domain/gate/known';
import type { Verdict } from '@/lib/domain/gate/question';
import type { Refusal, RefusalCode } from '@/lib/domain/gate/refusals';
import type { Plant } from '@/lib/domain/plant/plant';
import { matchesSerialPattern } from '@/lib/domain/plant/serial-pattern';
import { readLabel } from '@/lib/domain/station/scanned-label';
import { nextStep } from '@/lib/domain/units/progress';

/**
 * Rules that events of other devices may have changed since the server was last heard: an earlier step may have passed
 * at a tablet that is without the server too. They are not decided by a replica. Every other rule is: what was on hold,
 * scrapped, wrong in its slot or beyond a person's qualification stops as ever.
 */
const UNDECIDABLE: readonly RefusalCode[] = [
  'unknown_unit',
  'unknown_item',
  'wrong_step',
  'open_failure',
  'slot_empty',
];

/** The gate's answer by a replica. `withoutServer` says what the station does where a rule cannot be decided. */
export function judgeProvisional(
  event: WireEvent & { body: { unit: string } },
  known: Known,
  { asOfMs, withoutServer }: { asOfMs: number; withoutServer: 'flag' | 'stop' },
): Verdict {
  const all = judge(event, known);
  const { unit } = event.body;
  const isUndecided = ({ code }: Refusal) =>
    UNDECIDABLE.includes(code) && (code !== 'unknown_unit' || mayBeUnit(unit, known));
  const undecided = all.filter(isUndecided);
  const reasons = withoutServer === 'stop' ? all : all.filter((each) => !isUndecided(each));
  const state = known.unit(unit);
  const next = state === null ? null : nextStep(unit, state, known.plant);
  return {
    go: reasons.length === 0,
    reasons,
    next: next === null ? null : { operation: next.operation, step: next.step },
    provisional: { asOfMs, undecided },
  };
}

/** Whether a code that is unknown here can be a unit that another tablet has started: no label, no item, some product's serial. */
function mayBeUnit(code: string, { plant, item }: Known): boolean {
  return item(code) === null && readLabel(plant, code) === null && isSerial(plant, code);
}

function isSerial(plant: Plant, code: string): boolean {
  return (plant.file.products ?? []).some(
    ({ serialPattern }) => serialPattern === undefined || matchesSerialPattern(serialPattern, code),
  );
}
