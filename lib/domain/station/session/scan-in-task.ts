import { positionsAt } from '@/lib/domain/station/product-picture';
import { scanCommand } from '@/lib/domain/station/scan-command';
import { chooseDefect, choosePosition, meetPosition } from '@/lib/domain/station/session/note-defect';
import { obey, onPress } from '@/lib/domain/station/session/press-button';
import { chooseRepairPosition, meetInRepair } from '@/lib/domain/station/session/repair-unit';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionInput, SessionStep } from '@/lib/domain/station/session/session-input';
import {
  ask,
  lookUp,
  queueUnit,
  setAside,
  stepTo,
  takeNext,
  withTask,
} from '@/lib/domain/station/session/session-step';
import { meetInWork } from '@/lib/domain/station/session/work-on-unit';

/** A badge or a station is neither a defect nor a position. */
const ATTENTION = { kind: 'signal', signal: 'attention' } as const;

type Identified = Extract<SessionInput, { kind: 'identified' }>;

/** What a scan means in the task that stands on the screen. */
export function scanInTask(session: Session, code: string, context: SessionContext): SessionStep {
  const command = scanCommand(code);
  if (command === 'pass' || command === 'fail' || command === 'repair')
    return obey(session, command, context);
  if (command !== null) return onPress(session, { button: command }, context);
  const { task } = session;
  switch (task.step) {
    case 'idle':
      return ask(session, code);
    case 'repeat':
    case 'stopped':
      return session.waiting.length === 0 ? ask(session, code) : takeNext(queueUnit(session, code));
    case 'new':
    case 'signing':
      return code === task.unit ? ask(session, code) : lookUp(session, code);
    case 'asking':
    case 'unanswered':
      return stepTo(queueUnit(session, code));
    case 'working':
    case 'parts':
      if (code !== task.work.unit) return lookUp(session, code);
      return task.step === 'parts'
        ? stepTo(session)
        : stepTo(
            withTask(
              { ...session, aside: null },
              {
                ...task,
                notice: { code: 'already_in_work', scanned: code },
              },
            ),
          );
    case 'defect':
      if (context.picture.defects.some((defect) => defect.code === code))
        return chooseDefect(session, task.work, code);
      return code === task.work.unit ? stepTo(session) : lookUp(session, code);
    case 'position':
      if (knownPositions(task.work, context).includes(code))
        return choosePosition(session, task.work, { code: task.code, position: code });
      return code === task.work.unit ? stepTo(session) : lookUp(session, code);
    case 'confirming':
      return code === task.work.unit ? stepTo(session) : lookUp(session, code);
    case 'repairing': {
      const { repair } = task;
      if (code === repair.unit) return stepTo(session);
      const isPosition = repair.about.product?.lines.some((line) => line.positions.includes(code));
      if (repair.position === null && isPosition) return chooseRepairPosition(session, task, code);
      return lookUp(session, code);
    }
    default:
      return task satisfies never;
  }
}

/** What a code means in the task, now that it is known what it names. Nothing known: the scan is taken at its word. */
export function interpret(
  session: Session,
  { code, scan }: Identified,
  context: SessionContext,
): SessionStep {
  const { task } = session;
  const isUnit = scan !== null && (scan.unit !== null || scan.serialOf.length > 0);
  const isElse = scan?.label?.kind === 'badge' || scan?.label?.kind === 'station';
  switch (task.step) {
    case 'new':
      if (scan?.item?.kind === 'lot') return stepTo({ ...session, boardLot: code });
      return ask(session, code);
    case 'working':
    case 'parts':
      return meetInWork(session, task, { code, scan }, context);
    case 'defect':
      if (isUnit) return setAside(session, code);
      return isElse ? stepTo(session, ATTENTION) : chooseDefect(session, task.work, code);
    case 'position':
      if (isUnit) return setAside(session, code);
      return isElse ? stepTo(session, ATTENTION) : meetPosition(session, task, code);
    case 'confirming':
      if (isUnit) return setAside(session, code);
      return isElse ? stepTo(session, ATTENTION) : chooseDefect(session, task.work, code);
    case 'repairing':
      return meetInRepair(session, task, { code, scan, station: context.picture.station.code });
    case 'asking':
    case 'unanswered':
      return stepTo(queueUnit(session, code));
    case 'idle':
    case 'repeat':
    case 'stopped':
    case 'signing':
      return ask(session, code);
    default:
      return task satisfies never;
  }
}

function knownPositions(work: Work, { picture }: SessionContext): string[] {
  return work.about.product === null ? [] : positionsAt(work.about.product, picture.station.code);
}
