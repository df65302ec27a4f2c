import { reasonsToShow } from '@/lib/domain/gate/reasons-to-show';
import { scanCommand } from '@/lib/domain/station/scan-command';
import { decide } from '@/lib/domain/station/session/decide-task';
import { onPress } from '@/lib/domain/station/session/press-button';
import { interpret, scanInTask } from '@/lib/domain/station/session/scan-in-task';
import type { Session } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionInput, SessionStep } from '@/lib/domain/station/session/session-input';
import {
  followedBy,
  isBusy,
  queueUnit,
  stepTo,
  takeNext,
  withTask,
} from '@/lib/domain/station/session/session-step';
import { onSettled } from '@/lib/domain/station/session/settle-event';

/**
 * The station's screen after an input, and what its device has to do. Pure: every scan is either answered, kept for
 * its turn or named in a notice; none is dropped, and none is taken for the unit of another one.
 */
export function advanceSession(session: Session, input: SessionInput, context: SessionContext): SessionStep {
  return followedBy(respond(session, input, context), (after) => takeUpHeld(after, context));
}

function respond(session: Session, input: SessionInput, context: SessionContext): SessionStep {
  switch (input.kind) {
    case 'scanned':
      return onScan(session, input.code, context);
    case 'answered':
      return decide(session, input, context);
    case 'unanswered': {
      const { task } = session;
      if (task.step !== 'asking' || task.unit !== input.unit) return stepTo(session);
      const { unit, resumed } = task;
      return stepTo(withTask(session, { step: 'unanswered', unit, why: input.why, resumed }));
    }
    case 'answered_aside':
      return noteAside(session, input);
    case 'identified':
      if (session.lookup !== input.code) return stepTo(session);
      return interpret({ ...session, lookup: null }, input, context);
    case 'ticked':
      return stepTo(session);
    case 'settled':
      return onSettled(session, input, context);
    case 'refused':
      if (session.problems.some(({ id }) => id === input.problem.id)) return stepTo(session);
      return stepTo(
        { ...session, problems: [...session.problems, input.problem] },
        { kind: 'signal', signal: 'stop' },
      );
    case 'resumed':
      return resume(session, input);
    case 'pressed':
      return onPress(session, input.press, context);
    default:
      return input satisfies never;
  }
}

function onScan(session: Session, code: string, context: SessionContext): SessionStep {
  const command = scanCommand(code);
  if (command !== null) return onPress(session, { button: command }, context);
  if (!isBusy(session, context.now) && session.held.length === 0) return scanInTask(session, code, context);
  const { task } = session;
  const isSame = session.held.at(-1) === code || session.lookup === code;
  const isInWork = 'unit' in task && task.unit === code && task.step !== 'stopped';
  return stepTo(isSame || isInWork ? session : { ...session, held: [...session.held, code] });
}

function noteAside(
  session: Session,
  { unit, answer }: Extract<SessionInput, { kind: 'answered_aside' }>,
): SessionStep {
  if (session.aside?.unit !== unit) return stepTo(session);
  if (answer === null) return stepTo({ ...session, aside: { unit, verdict: 'unanswered' } });
  const { go, provisional } = answer;
  const reasons = reasonsToShow(answer.reasons);
  const aside = { unit, verdict: { go, reasons, ...(provisional !== undefined && { provisional }) } };
  return stepTo({ ...session, aside }, { kind: 'signal', signal: go ? 'attention' : 'stop' });
}

/** Takes up what was scanned meanwhile, until something must be asked again. */
function takeUpHeld(session: Session, context: SessionContext): SessionStep {
  const [code, ...held] = session.held;
  if (code === undefined || isBusy(session, context.now)) return stepTo(session);
  return followedBy(scanInTask({ ...session, held }, code, context), (after) => takeUpHeld(after, context));
}

function resume(
  session: Session,
  { unit, resumed, waiting }: Extract<SessionInput, { kind: 'resumed' }>,
): SessionStep {
  const queued = waiting.reduce(queueUnit, session);
  if (unit === null) return takeNext(queued);
  return stepTo(withTask(queued, { step: 'asking', unit, resumed }), { kind: 'ask', unit });
}
