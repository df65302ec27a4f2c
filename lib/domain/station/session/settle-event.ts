import { settleRepair } from '@/lib/domain/station/session/repair-unit';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionInput, SessionStep } from '@/lib/domain/station/session/session-input';
import { ask, stepTo, takeNext, withTask } from '@/lib/domain/station/session/session-step';

type Settled = Extract<SessionInput, { kind: 'settled' }>;

/** The server answered about an event: what was given is confirmed, and what waited for it goes on. */
export function onSettled(before: Session, input: Settled, _context: SessionContext): SessionStep {
  const session = noteAnswer(before, input);
  if (input.how === 'after_kept') return stepTo(session);
  const isGiven = before.given?.tag === input.tag;
  const done = isGiven && input.isRecorded ? [{ kind: 'signal', signal: 'done' } as const] : [];
  const { task } = session;
  switch (task.step) {
    case 'new':
      if (!task.isSent) return stepTo(session, ...done);
      if (input.isRecorded) return ask(session, task.unit);
      return stepTo(withTask(session, { ...task, isSent: false }));
    case 'signing':
      if (!task.isSent) return stepTo(session, ...done);
      if (!input.isRecorded) return stepTo(withTask(session, { ...task, isSent: false }));
      return { ...takeNext(session), effects: [...done, ...takeNext(session).effects] };
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

function noteAnswer(session: Session, { tag, isRecorded, how }: Settled): Session {
  if (session.given?.tag !== tag) return session;
  const answer = how === 'kept' ? 'kept' : isRecorded ? 'recorded' : 'refused';
  return { ...session, given: { ...session.given, answer } };
}

function withoutLastJoin(work: Work): Work {
  return { ...work, joined: work.joined.slice(0, -1) };
}
