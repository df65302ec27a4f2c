import { reasonsToShow } from '@/lib/domain/gate/reasons-to-show';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { scanCommand } from '@/lib/domain/station/scan-command';
import type { About, Session, Task, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionInput, SessionStep } from '@/lib/domain/station/session/session-input';
import { queueUnit, STOP_SHOWN_MS, stepTo, withTask } from '@/lib/domain/station/session/session-step';

type Answered = Extract<SessionInput, { kind: 'answered' }>;
type Signal = 'go' | 'stop' | 'attention';

/** What the answer about a unit means here: work, start, sign off, repair or no-go. */
export function decide(session: Session, input: Answered, context: SessionContext): SessionStep {
  const { task } = session;
  const isAsked = (task.step === 'asking' || task.step === 'unanswered') && task.unit === input.unit;
  if (!isAsked) return stepTo(session);
  const { provisional } = input.answer;
  const about: About = {
    scan: input.scan,
    unit: input.scan?.unit ?? null,
    product: input.product,
    ...(provisional && { provisional }),
  };
  const { task: next, signal } = decideTask(input, about, context);
  if ((next.step === 'working' || next.step === 'repeat') && task.resumed !== null)
    return stepTo(withTask(session, resumeWork(next.work, task.resumed)), { kind: 'signal', signal });
  if (next.step !== 'stopped' && next.step !== 'repeat')
    return stepTo(withTask(session, next), { kind: 'signal', signal });
  return stepTo(
    withTask(parkHeld(session), next),
    { kind: 'signal', signal },
    { kind: 'tick', afterMs: STOP_SHOWN_MS },
  );
}

function decideTask(
  { unit, answer }: Answered,
  about: About,
  context: SessionContext,
): { task: Task; signal: Signal } {
  const said = [...answer.reasons, ...(answer.provisional?.undecided ?? [])];
  const isUnknown = said.some((reason) => reason.code === 'unknown_unit');
  const options = about.scan?.startable ?? [];
  const isBeginning = isUnknown && options.length > 0 && context.may('event:unit.started');
  if (answer.go && !isBeginning) {
    const work = newWork(unit, about, context.now);
    if (isRepeat(about, context))
      return { task: { step: 'repeat', work, shownAt: context.now }, signal: 'attention' };
    const task: Task = { step: 'working', work, notice: null, question: null, isJoining: false };
    return { task, signal: 'go' };
  }
  if (isBeginning) return { task: { step: 'new', unit, options, isSent: false }, signal: 'attention' };
  if (!context.picture.isOnRoute && about.unit !== null)
    return offRoute(unit, answer.reasons, { ...about, unit: about.unit }, context);
  const stopped = stoppedBy(unit, answer.reasons, about, context);
  return { task: stopped, signal: isUnknown && about.scan?.label != null ? 'attention' : 'stop' };
}

/** Whether everything that the unit owes of the operation here is passed: it is not due, and may be a mistake. */
function isRepeat({ unit }: About, { picture }: SessionContext): boolean {
  const here = (unit?.steps ?? []).filter((step) => step.operation === picture.station.operation);
  return here.length > 0 && here.every((step) => step.last === 'pass');
}

/** At a station that is on nobody's route units are signed off or repaired. */
function offRoute(
  unit: string,
  reasons: Refusal[],
  about: About & { unit: NonNullable<About['unit']> },
  context: SessionContext,
): { task: Task; signal: Signal } {
  const { may } = context;
  const { failure, open, signing, isScrapped } = about.unit;
  if (may('event:unit.signed')) {
    if (signing.length > 0) return { task: stoppedBy(unit, signing, about, context), signal: 'stop' };
    return {
      task: { step: 'signing', unit, about, isSent: false },
      signal: about.unit.next === null ? 'go' : 'attention',
    };
  }
  const isForRepair = failure !== null || open.length > 0;
  const isHeld = about.unit.holds.length > 0;
  if (isForRepair && !isScrapped && !isHeld && may('event:part.removed'))
    return { task: repairOf(unit, about), signal: 'attention' };
  return { task: stoppedBy(unit, reasons, about, context), signal: 'stop' };
}

function stoppedBy(unit: string, reasons: Refusal[], about: About, { now }: SessionContext): Task {
  return { step: 'stopped', unit, reasons: reasonsToShow(reasons), about, shownAt: now };
}

/** The task of repairing a unit, from its first question. */
export function repairOf(unit: string, about: About): Task {
  const repair = { unit, about, position: null, strange: null, chosen: null, isRemoved: false, done: [] };
  return { step: 'repairing', repair, notice: null, isSent: false };
}

function newWork(unit: string, about: About, startedAt: string): Work {
  return { unit, startedAt, about, tools: [], joined: [], without: [], defects: [], note: '', readings: [] };
}

function resumeWork(
  fresh: Work,
  {
    startedAt,
    defects,
    note,
    readings,
    isFailing,
  }: NonNullable<Extract<Task, { step: 'asking' }>['resumed']>,
): Task {
  const work = { ...fresh, startedAt, defects, note, readings };
  if (!isFailing) return { step: 'working', work, notice: null, question: null, isJoining: false };
  return defects.length === 0 ? { step: 'defect', work, notice: null } : { step: 'confirming', work };
}

/** A no-go must be seen: what was scanned before it stood there waits, and commands meant for a go are void. */
function parkHeld(session: Session): Session {
  const units = session.held.filter((code) => scanCommand(code) === null);
  return units.reduce(queueUnit, { ...session, held: [] });
}
