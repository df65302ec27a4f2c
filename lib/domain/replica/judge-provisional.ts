import type { WireEvent } from '@/lib/domain/events/catalogue';
import { judge } from '@/lib/domain/gate/judge';
import type { Known } from '@/lib/domain/gate/known';
import type { Verdict } from '@/lib/domain/gate/question';
import type { RefusalCode } from '@/lib/domain/gate/refusals';
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
  const undecided = all.filter(({ code }) => UNDECIDABLE.includes(code));
  const broken = all.filter(({ code }) => !UNDECIDABLE.includes(code));
  const reasons = withoutServer === 'stop' ? all : broken;
  const { unit } = event.body;
  const state = known.unit(unit);
  const next = state === null ? null : nextStep(unit, state, known.plant);
  return {
    go: reasons.length === 0,
    reasons,
    next: next === null ? null : { operation: next.operation, step: next.step },
    provisional: { asOfMs, undecided },
  };
}
