import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Press } from '@/lib/domain/station/session/session-input';
import { StationRun, scanOf, unitOf } from '@/tests/support/station-run';

type Step =
  | { kind: 'scan'; unit: string }
  | { kind: 'go' }
  | { kind: 'stop' }
  | { kind: 'silence' }
  | { kind: 'identified' }
  | { kind: 'press'; press: Press };

const units = ['U-1', 'U-2', 'U-3', 'U-4'];
const presses: Press[] = [
  { button: 'pass' },
  { button: 'fail' },
  { button: 'acknowledge' },
  { button: 'retry' },
  { button: 'record_fail' },
  { button: 'defect', code: 'BRIDGE' },
  { button: 'position', position: 'C1' },
  { button: 'another_defect' },
];
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ kind: fc.constant('scan' as const), unit: fc.constantFrom(...units) }),
  },
  { weight: 3, arbitrary: fc.constant({ kind: 'go' as const }) },
  fc.constant({ kind: 'stop' as const }),
  fc.constant({ kind: 'silence' as const }),
  { weight: 3, arbitrary: fc.constant({ kind: 'identified' as const }) },
  {
    weight: 5,
    arbitrary: fc.record({ kind: fc.constant('press' as const), press: fc.constantFrom(...presses) }),
  },
);

/** Does a step if it can happen now: an answer needs a question. */
function play(run: StationRun, each: Step): void {
  const asking = run.task.step === 'asking' ? run.task.unit : null;
  if (each.kind === 'scan') run.scan(each.unit);
  if (each.kind === 'press') run.press(each.press);
  if (each.kind === 'go' && asking !== null) run.go(asking);
  if (each.kind === 'stop' && asking !== null) run.stop(asking, [{ code: 'wrong_step' }]);
  if (each.kind === 'silence' && asking !== null)
    run.give({ kind: 'unanswered', unit: asking, why: 'unreachable' });
  const { lookup } = run.session;
  if (each.kind === 'identified' && lookup !== null)
    run.identify(lookup, scanOf(lookup, { unit: unitOf(lookup) }));
}

/** Every unit that the session still has in sight. */
function inSight({ session }: StationRun): string[] {
  const { task, waiting, held, lookup } = session;
  const current = 'work' in task ? task.work.unit : 'unit' in task ? task.unit : null;
  return [current, lookup, ...waiting, ...held].filter((code) => code !== null);
}

let resultCount = 0;

test('no scan is lost, and no result is given to another unit than the one with the go, or twice', () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 20, maxLength: 80, size: 'max' }), (steps) => {
      const run = new StationRun();
      let goFor: string | null = null;
      const pressedFor = new Set<string>();
      for (const each of steps) {
        const askedBefore = run.asked.length;
        const resultsBefore = run.recorded.length;
        const asking = run.task.step === 'asking' ? run.task.unit : null;
        const [current] = inSight(run);
        if (each.kind === 'press' && each.press.button === 'pass' && current === goFor && goFor !== null)
          pressedFor.add(goFor);
        play(run, each);
        if (each.kind === 'go' && asking !== null) goFor = asking;
        if (each.kind === 'scan') {
          const isTaken =
            inSight(run).includes(each.unit) || run.asked.slice(askedBefore).includes(each.unit);
          expect(isTaken).toBe(true);
        }
        const results = run.recorded.slice(resultsBefore);
        expect(results.length).toBeLessThanOrEqual(1);
        for (const { body } of results) {
          expect(body.unit).toBe(goFor);
          if (body.result === 'pass') expect(pressedFor).toContain(body.unit);
          pressedFor.clear();
          goFor = null;
          resultCount += 1;
        }
      }
    }),
    { numRuns: 500 },
  );
  expect(resultCount).toBeGreaterThan(200);
});
