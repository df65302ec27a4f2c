import { chooseRepairPosition, install, remove, tellFitted } from '@/lib/domain/station/session/repair-unit';
import type { Session } from '@/lib/domain/station/session/session';
import type { Press, SessionContext, SessionStep } from '@/lib/domain/station/session/session-input';
import { stepTo, withTask } from '@/lib/domain/station/session/session-step';

/** Buttons of a repair: which position, that its part is off, what comes there. */
export function pressInRepair(
  session: Session,
  task: Extract<Session['task'], { step: 'repairing' }>,
  press: Press,
  { picture }: SessionContext,
): SessionStep {
  const { repair } = task;
  const station = picture.station.code;
  if (task.isSent) return stepTo(session);
  switch (press.button) {
    case 'repair_position':
      return chooseRepairPosition(session, task, press.position);
    case 'removed':
      return repair.isRemoved ? stepTo(session) : remove(session, { reason: press.reason, station });
    case 'fitted_already':
      return repair.chosen?.kind === 'item'
        ? tellFitted(session, { item: repair.chosen.item.item, station })
        : stepTo(session);
    case 'donor_position':
      return repair.chosen?.kind === 'donor'
        ? install(session, { fromUnit: repair.chosen.unit, fromPosition: press.position, station })
        : stepTo(session);
    case 'leave_empty': {
      const next = { ...repair, position: null, chosen: null, isRemoved: false };
      return stepTo(withTask(session, { ...task, repair: next, notice: null }));
    }
    default:
      return stepTo(session);
  }
}
