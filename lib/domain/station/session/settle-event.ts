import { settleRepair } from '@/lib/domain/station/session/repair-unit';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionInput, SessionStep } from '@/lib/domain/station/session/session-input';
import { ask, stepTo, takeNext, withTask } from '@/lib/domain/station/session/session-step';

type Settled = Extract<SessionInput, { kind: 'settled' }>;

/** The server answered about an event: what was given is confirmed, and what waited for it goes on. */
export function onSettled(before: Session, input: Settled, context: SessionContext): SessionStep {
  const session = noteAnswer(before, input);
  if (input.how === 'after_kept') return stepTo(session);
  const isGiven = before.given?.tag === input.tag;
  const done = isGiven && input.isRecorded ? [{ kind: 'signal', signal: 'done' } as const] : [];
  const { task } = session;
  switch (task.step) {
    case 'new':
      if (!task.isSent) return stepTo(session, ...done);
      // Where units are only marked, nothing is worked on: the next one may come.
      if (input.isRecorded && !context.picture.isOnRoute) return goOn(session, done);
      if (input.isRecorded) return ask(session, task.unit);
      return stepTo(withTask(session, { ...task, isSent: false }));
    case 'signing':
      if (!task.isSent) return stepTo(session, ...done);
      if (!input.isRecorded) return stepTo(withTask(session, { ...task, isSent: false }));
      return goOn(session, done);
    case 'working':
      if (!task.isJoining) return stepTo(session, ...done);
      return stepTo(
        withTask(session, {
          ...task,
          isJoining: false,
          work: input.isRecorded ? task.work : withoutLastJoin(task.work),
        }),
        ...(input.isRecorded ? [{ kind: 'signal', signal: 'done' } as const] : []),
      );
    case 'repairing':
      return task.isSent ? settleRepair(session, task, input) : stepTo(session, ...done);
    default:
      return stepTo(session, ...done);
  }
}

function goOn(session: Session, effects: SessionStep['effects']): SessionStep {
  const next = takeNext(session);
  return { ...next, effects: [...effects, ...next.effects] };
}

function noteAnswer(session: Session, { tag, isRecorded, how }: Settled): Session {
  if (session.given?.tag !== tag) return session;
  const answer = how === 'kept' ? 'kept' : isRecorded ? 'recorded' : 'refused';
  return { ...session, given: { ...session.given, answer } };
}

function withoutLastJoin(work: Work): Work {
  return { ...work, joined: work.joined.slice(0, -1) };
}
