import type { EventDraft } from '@/lib/domain/station/event-draft';
import { scanCommand } from '@/lib/domain/station/scan-command';
import type { Given, Session, Task } from '@/lib/domain/station/session/session';
import type { SessionEffect, SessionStep } from '@/lib/domain/station/session/session-input';
import { instantOf } from '@/lib/domain/time';

/** A session with what is to be done for it. */
export function stepTo(session: Session, ...effects: SessionEffect[]): SessionStep {
  return { session, effects };
}

/** The same session with another task. */
export function withTask(session: Session, task: Task): Session {
  return { ...session, task };
}

/** A step followed by another one, effects in order. */
export function followedBy(step: SessionStep, next: (session: Session) => SessionStep): SessionStep {
  const after = next(step.session);
  return { session: after.session, effects: [...step.effects, ...after.effects] };
}

/** Asks the server about a unit. */
export function ask(session: Session, unit: string): SessionStep {
  const asking = withTask({ ...session, aside: null }, { step: 'asking', unit, resumed: null });
  return stepTo(asking, { kind: 'ask', unit });
}

/** Asks the server what a code is. */
export function lookUp(session: Session, code: string): SessionStep {
  return stepTo({ ...session, lookup: code }, { kind: 'identify', code });
}

/** Puts a unit behind those that wait, once. */
export function queueUnit(session: Session, unit: string): Session {
  return session.waiting.includes(unit) ? session : { ...session, waiting: [...session.waiting, unit] };
}

/**
 * Lets a unit wait that was scanned while another one is in work, and asks about it at once: what stands on the screen
 * must not be read as its verdict.
 */
export function setAside(session: Session, unit: string): SessionStep {
  const aside = { unit, verdict: null };
  return stepTo(
    { ...queueUnit(session, unit), aside },
    { kind: 'signal', signal: 'attention' },
    { kind: 'ask_aside', unit },
  );
}

/**
 * Leaves the task; the first of the waiting units is next, unless a refusal must be read first. What was said
 * of the unit that is done must not speak for the next one, for which nobody has seen a go yet.
 */
export function takeNext(session: Session): SessionStep {
  const [unit, ...waiting] = session.waiting;
  const held = session.held.filter((code) => scanCommand(code) === null);
  const idle = withTask({ ...session, held, aside: null }, { step: 'idle' });
  if (unit === undefined || session.problems.length > 0) return stepTo(idle);
  return ask({ ...idle, waiting }, unit);
}

/** Hands an event over to the device; the tag tells its answer from others. */
export function record(session: Session, draft: EventDraft): SessionStep {
  const tag = session.nextTag;
  return stepTo({ ...session, nextTag: tag + 1 }, { kind: 'record', tag, draft });
}

/** The same for what has happened whatever it breaks: it is flagged instead of refused. */
export function recordFact(session: Session, draft: EventDraft): SessionStep {
  const tag = session.nextTag;
  return stepTo({ ...session, nextTag: tag + 1 }, { kind: 'record', tag, draft, isFact: true });
}

/** Hands over a result and shows it as given while the server has not answered. */
export function give(session: Session, what: Given['what'], unit: string, draft: EventDraft): SessionStep {
  const given: Given = { tag: session.nextTag, unit, what, answer: null };
  return record({ ...session, given }, draft);
}

/** How long a no-go stands at least, in milliseconds, before the next scan can take it away. */
export const STOP_SHOWN_MS = 1000;

/** Whether something must be answered or read before the next scan can mean anything; `now` is RFC 3339. */
export function isBusy({ task, lookup, problems }: Session, now: string): boolean {
  if (lookup !== null || problems.length > 0) return true;
  switch (task.step) {
    case 'asking':
    case 'unanswered':
      return true;
    case 'new':
    case 'signing':
    case 'repairing':
      return task.isSent;
    case 'repeat':
    case 'stopped': {
      // A clock that was set back must not hold the station up.
      const shownUs = instantOf(now) - instantOf(task.shownAt);
      return shownUs >= 0 && shownUs < STOP_SHOWN_MS * 1000;
    }
    case 'working':
      return task.isJoining || task.question !== null;
    default:
      return false;
  }
}
