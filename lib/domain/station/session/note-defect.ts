import { isOutsideBom } from '@/lib/domain/station/product-picture';
import { processedDraft } from '@/lib/domain/station/session/processed-draft';
import { rememberReadings } from '@/lib/domain/station/session/reading-draft';
import type { DefectDraft, Session, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionStep } from '@/lib/domain/station/session/session-input';
import { followedBy, give, stepTo, takeNext, withTask } from '@/lib/domain/station/session/session-step';

/** A defect has its code; its position is next. */
export function chooseDefect(session: Session, work: Work, code: string): SessionStep {
  return stepTo(withTask(session, { step: 'position', work, code, strange: null }));
}

/** A scanned or typed position; one that the BOM does not name is asked about once. */
export function meetPosition(
  session: Session,
  task: Extract<Session['task'], { step: 'position' }>,
  position: string,
): SessionStep {
  const { product } = task.work.about;
  if (product === null || !isOutsideBom(product, position))
    return choosePosition(session, task.work, { code: task.code, position });
  return stepTo(withTask(session, { ...task, strange: position }), { kind: 'signal', signal: 'attention' });
}

/** A defect is complete; the same one is not noted twice. */
export function choosePosition(session: Session, work: Work, defect: DefectDraft): SessionStep {
  const isNoted = work.defects.some(
    ({ code, position }) => code === defect.code && position === defect.position,
  );
  const defects = isNoted ? work.defects : [...work.defects, defect];
  return stepTo(withTask(session, { step: 'confirming', work: { ...work, defects } }));
}

/** Gives the fail with what was noted, and goes on. */
export function recordFail(session: Session, work: Work, context: SessionContext): SessionStep {
  const draft = processedDraft({ work, result: 'fail', session, context });
  return followedBy(give(rememberReadings(session, work), 'fail', work.unit, draft), takeNext);
}
