import type { EventDraft } from '@/lib/domain/station/event-draft';
import { SCAN_COMMANDS, type ScanCommand } from '@/lib/domain/station/scan-command';
import { repairOf } from '@/lib/domain/station/session/decide-task';
import { aboutNow } from '@/lib/domain/station/session/inner-to-join';
import { chooseDefect, choosePosition, recordFail } from '@/lib/domain/station/session/note-defect';
import { pressInRepair } from '@/lib/domain/station/session/press-in-repair';
import { withReading } from '@/lib/domain/station/session/reading-draft';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { Press, SessionContext, SessionStep } from '@/lib/domain/station/session/session-input';
import {
  give,
  isBusy,
  record,
  setAside,
  stepTo,
  takeNext,
  withTask,
} from '@/lib/domain/station/session/session-step';
import { join, pass } from '@/lib/domain/station/session/work-on-unit';

/** What a button does, whether it was pressed or scanned. A button that has no meaning now does nothing. */
export function onPress(session: Session, press: Press, context: SessionContext): SessionStep {
  switch (press.button) {
    case 'pass':
    case 'fail':
    case 'repair':
      if (!isBusy(session, context.now) && session.held.length === 0)
        return obey(session, press.button, context);
      return 'work' in session.task && session.task.step !== 'repeat'
        ? hold(session, press.button)
        : refuse(session);
    case 'leave':
      return leave(session);
    case 'acknowledge':
      return acknowledge(session);
    case 'drop_waiting':
      return stepTo({
        ...session,
        waiting: session.waiting.filter((unit) => unit !== press.unit),
        aside: session.aside?.unit === press.unit ? null : session.aside,
      });
    case 'set_start':
      return stepTo({ ...session, order: press.order, boardLot: press.boardLot });
    case 'forget_lot':
      return stepTo({ ...session, lots: session.lots.filter((lot) => !isLotOf(lot, press)) });
    default:
      return inTask(session, press, context);
  }
}

type Lot = { product: string; revision: string; part: string };
function isLotOf(lot: Lot, { product, revision, part }: Lot): boolean {
  return lot.part === part && lot.product === product && lot.revision === revision;
}

/**
 * A result for the unit in work that comes while a scan is looked up waits in its place among the scans. Before the
 * verdict is there nothing is held: nobody may pass what they have not seen a go for.
 */
function hold(session: Session, button: ScanCommand): SessionStep {
  const code = Object.entries(SCAN_COMMANDS).find(([, command]) => command === button)?.[0];
  const isGiven = code === undefined || session.held.at(-1) === code;
  return stepTo(isGiven ? session : { ...session, held: [...session.held, code] });
}

/** Pass, fail or repair, now that nothing is asked any more. */
export function obey(
  session: Session,
  button: 'pass' | 'fail' | 'repair',
  context: SessionContext,
): SessionStep {
  const { task } = session;
  if (button === 'repair') {
    const about = task.step === 'working' ? task.work.about : 'about' in task ? task.about : null;
    const unit = task.step === 'working' ? task.work.unit : 'unit' in task ? task.unit : null;
    const canRepair = about?.unit != null && unit !== null && context.may('event:part.removed');
    return canRepair ? stepTo(withTask(session, repairOf(unit, about))) : refuse(session);
  }
  if (task.step === 'working' && task.question === null)
    return button === 'pass'
      ? pass(session, task.work, context, {})
      : stepTo(withTask(session, { step: 'defect', work: task.work, notice: null }));
  // A reading was asked about before the parts were.
  if (task.step === 'parts' && button === 'pass')
    return pass(session, task.work, context, { isBeyond: true });
  if (task.step === 'confirming' && button === 'fail') return recordFail(session, task.work, context);
  return refuse(session);
}

function refuse(session: Session): SessionStep {
  return stepTo(session, { kind: 'signal', signal: 'attention' });
}

function leave(session: Session): SessionStep {
  const { task } = session;
  switch (task.step) {
    case 'parts':
    case 'defect':
    case 'position':
    case 'confirming':
      return back(session, task);
    case 'new':
    case 'signing':
      return task.isSent ? stepTo(session) : takeNext(session);
    case 'repairing':
      if (task.isSent) return stepTo(session);
      return task.repair.strange === null
        ? takeNext(session)
        : stepTo(withTask(session, { ...task, repair: { ...task.repair, strange: null } }));
    case 'working':
      return task.isJoining ? stepTo(session) : takeNext(session);
    default:
      return takeNext(session);
  }
}

type Failing = Extract<Session['task'], { step: 'parts' | 'defect' | 'position' | 'confirming' }>;

/** One question back; leaving the first one gives up the fail, not the unit. */
function back(session: Session, task: Failing): SessionStep {
  const { work } = task;
  if (task.step === 'position')
    return stepTo(
      withTask(
        session,
        task.strange === null ? { step: 'defect', work, notice: null } : { ...task, strange: null },
      ),
    );
  if (task.step === 'defect' && work.defects.length > 0)
    return stepTo(withTask(session, { step: 'confirming', work }));
  const cleared: Work = task.step === 'parts' ? work : { ...work, defects: [], note: '' };
  return stepTo(
    withTask(session, { step: 'working', work: cleared, notice: null, question: null, isJoining: false }),
  );
}

function acknowledge(session: Session): SessionStep {
  const [read, ...problems] = session.problems;
  if (read === undefined) {
    if (session.aside !== null) return stepTo({ ...session, aside: null });
    if (session.task.step === 'repeat') return goOn(session, session.task);
    return session.task.step === 'stopped' ? takeNext(session) : stepTo(session);
  }
  const after = { ...session, problems };
  const step = after.task.step === 'idle' ? takeNext(after) : stepTo(after);
  return { session: step.session, effects: [{ kind: 'forget', id: read.id }, ...step.effects] };
}

/** Somebody has said that the passed step is to be done again: from now on it is work. */
function goOn(session: Session, { work }: Extract<Session['task'], { step: 'repeat' }>): SessionStep {
  return stepTo(
    withTask(session, { step: 'working', work, notice: null, question: null, isJoining: false }),
    { kind: 'signal', signal: 'go' },
  );
}

type TaskPress = Exclude<Press, { button: ScanCommand | 'drop_waiting' | 'set_start' | 'forget_lot' }>;

function inTask(session: Session, press: TaskPress, context: SessionContext): SessionStep {
  const { task } = session;
  switch (task.step) {
    case 'unanswered':
      if (press.button !== 'retry') return stepTo(session);
      return stepTo(withTask(session, { step: 'asking', unit: task.unit, resumed: task.resumed }), {
        kind: 'ask',
        unit: task.unit,
      });
    case 'new':
      return press.button === 'start' && !task.isSent
        ? start(session, task, press, context)
        : stepTo(session);
    case 'stopped':
      return press.button === 'signing' && task.about.unit !== null
        ? stepTo(withTask(session, { step: 'signing', unit: task.unit, about: task.about, isSent: false }))
        : stepTo(session);
    case 'repeat':
      return press.button === 'go_on' ? goOn(session, task) : stepTo(session);
    case 'working':
      return inWork(session, task, press, context);
    case 'parts':
      return press.button === 'pass_without'
        ? pass(session, task.work, context, { isWithout: true, isBeyond: true })
        : stepTo(session);
    case 'defect':
      if (press.button === 'defect') return chooseDefect(session, task.work, press.code);
      return press.button === 'record_fail' ? recordFail(session, task.work, context) : stepTo(session);
    case 'position':
      if (press.button !== 'position') return stepTo(session);
      return choosePosition(session, task.work, { code: task.code, position: press.position });
    case 'confirming':
      return inConfirming(session, task.work, press, context);
    case 'signing':
      return press.button === 'sign' && !task.isSent
        ? sign(session, task, press.meaning, context)
        : stepTo(session);
    case 'repairing':
      return pressInRepair(session, task, press, context);
    case 'idle':
    case 'asking':
      return stepTo(session);
    default:
      return task satisfies never;
  }
}

function start(
  session: Session,
  task: Extract<Session['task'], { step: 'new' }>,
  { product, revision }: { product: string; revision: string },
  { picture }: SessionContext,
): SessionStep {
  const { order, boardLot } = session;
  const sent = withTask(session, { ...task, isSent: true });
  const draft: EventDraft = {
    type: 'unit.started',
    station: picture.station.code,
    body: {
      unit: task.unit,
      product,
      revision,
      ...(order !== '' && { order }),
      ...(boardLot !== '' && { boardLot }),
    },
  };
  // On a route the go for the unit follows at once; elsewhere the start is all that is done here.
  return picture.isOnRoute ? record(sent, draft) : give(sent, 'started', task.unit, draft);
}

function sign(
  session: Session,
  task: Extract<Session['task'], { step: 'signing' }>,
  meaning: string,
  { picture }: SessionContext,
): SessionStep {
  return give(withTask(session, { ...task, isSent: true }), 'signed', task.unit, {
    type: 'unit.signed',
    station: picture.station.code,
    body: { unit: task.unit, meaning },
  });
}

function inWork(
  session: Session,
  task: Extract<Session['task'], { step: 'working' }>,
  press: TaskPress,
  context: SessionContext,
): SessionStep {
  const { work, question } = task;
  if (press.button === 'signing')
    return stepTo(
      withTask(session, { step: 'signing', unit: work.unit, about: aboutNow(work), isSent: false }),
    );
  if (press.button === 'reading') {
    const readings = withReading(work.readings, press.reading);
    return stepTo(withTask(session, { ...task, work: { ...work, readings }, notice: null }));
  }
  if (press.button === 'pass_beyond' && question === null && !task.isJoining)
    return pass(session, work, context, { isBeyond: true });
  if (question === null) return stepTo(session);
  if (press.button === 'join') return join(session, work, question, context);
  if (press.button === 'not_join')
    return setAside(withTask(session, { ...task, question: null }), question.unit);
  return stepTo(session);
}

function inConfirming(session: Session, work: Work, press: TaskPress, context: SessionContext): SessionStep {
  switch (press.button) {
    case 'record_fail':
      return recordFail(session, work, context);
    case 'another_defect':
      return stepTo(withTask(session, { step: 'defect', work, notice: null }));
    case 'note':
      return stepTo(withTask(session, { step: 'confirming', work: { ...work, note: press.note } }));
    case 'remove_defect': {
      const defects = work.defects.filter((_, index) => index !== press.index);
      const changed = { ...work, defects };
      return stepTo(
        withTask(
          session,
          defects.length === 0
            ? { step: 'defect', work: changed, notice: null }
            : { step: 'confirming', work: changed },
        ),
      );
    }
    default:
      return stepTo(session);
  }
}
