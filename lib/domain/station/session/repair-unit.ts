import { isOutsideBom, partsAt } from '@/lib/domain/station/product-picture';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import type { Repair, Session, Task } from '@/lib/domain/station/session/session';
import type { SessionStep } from '@/lib/domain/station/session/session-input';
import { record, recordFact, setAside, stepTo, withTask } from '@/lib/domain/station/session/session-step';

type Repairing = Extract<Task, { step: 'repairing' }>;
type Scanned = { code: string; scan: ScanPicture | null };

/** The position that is repaired; one that stands empty already only needs a part. */
export function chooseRepairPosition(session: Session, task: Repairing, position: string): SessionStep {
  const isRemoved = openPositions(task.repair).includes(position);
  const repair: Repair = { ...task.repair, position, strange: null, chosen: null, isRemoved };
  return stepTo(withTask(session, { ...task, repair, notice: null }));
}

/** A position that the BOM does not name is asked about once; one that this unit is known to have is not. */
function meetRepairPosition(session: Session, task: Repairing, position: string): SessionStep {
  const { product, unit } = task.repair.about;
  const isKnown =
    openPositions(task.repair).includes(position) ||
    unit?.fitted.includes(position) ||
    unit?.failure?.defects.some((defect) => defect.position === position);
  if (isKnown || product === null || !isOutsideBom(product, position))
    return chooseRepairPosition(session, task, position);
  const repair: Repair = { ...task.repair, strange: position };
  return stepTo(withTask(session, { ...task, repair, notice: null }), {
    kind: 'signal',
    signal: 'attention',
  });
}

/** Positions that stand empty: from before, and from this repair. */
export function openPositions({ about, done }: Repair): string[] {
  const open = new Set(about.unit?.open ?? []);
  for (const { position, what } of done) {
    if (what === 'removed') open.add(position);
    else open.delete(position);
  }
  return [...open];
}

/** A scan during a repair: a position, the new part, a unit that gives its part, or the next unit. */
export function meetInRepair(
  session: Session,
  task: Repairing,
  { code, scan, station }: Scanned & { station: string },
): SessionStep {
  const { repair } = task;
  const isUnit = scan !== null && (scan.unit !== null || scan.serialOf.length > 0);
  if (repair.position === null) {
    if (isUnit) return setAside(session, code);
    if (scan?.item) return complain(session, task, code);
    return meetRepairPosition(session, task, code);
  }
  if (!repair.isRemoved)
    return isUnit ? setAside(session, code) : complain(session, task, code, 'part_still_on');
  if (scan?.item) {
    const parts = repair.about.product === null ? [] : partsAt(repair.about.product, repair.position);
    const isExpected = parts.length === 0 || (scan.item.part !== null && parts.includes(scan.item.part));
    const chosen = { kind: 'item' as const, item: scan.item, isExpected };
    const next = withTask(session, { ...task, repair: { ...repair, chosen }, notice: null });
    return isExpected
      ? install(next, { item: code, station })
      : stepTo(next, { kind: 'signal', signal: 'stop' });
  }
  if (scan?.unit) {
    const chosen = { kind: 'donor' as const, unit: code };
    return stepTo(withTask(session, { ...task, repair: { ...repair, chosen }, notice: null }));
  }
  return complain(session, task, code);
}

function complain(
  session: Session,
  task: Repairing,
  scanned: string,
  code: 'not_an_item' | 'part_still_on' = 'not_an_item',
): SessionStep {
  return stepTo(withTask(session, { ...task, notice: { code, scanned } }), {
    kind: 'signal',
    signal: 'attention',
  });
}

function sent(session: Session): { session: Session; repair: Repair } | null {
  const { task } = session;
  if (task.step !== 'repairing' || task.isSent) return null;
  return { session: withTask(session, { ...task, isSent: true, notice: null }), repair: task.repair };
}

/** Records that the part at the position was taken off. */
export function remove(session: Session, options: { reason: string; station: string }): SessionStep {
  const sending = sent(session);
  if (sending === null || sending.repair.position === null) return stepTo(session);
  const { unit, position } = sending.repair;
  return record(sending.session, {
    type: 'part.removed',
    station: options.station,
    body: { unit, position, ...(options.reason !== '' && { reason: options.reason }) },
  });
}

/** Records the new part: from an item, or from a position of another unit. */
export function install(
  session: Session,
  source: { station: string } & ({ item: string } | { fromUnit: string; fromPosition: string }),
): SessionStep {
  const sending = sent(session);
  if (sending === null || sending.repair.position === null) return stepTo(session);
  const { unit, position } = sending.repair;
  const { station, ...from } = source;
  return record(sending.session, { type: 'part.installed', station, body: { unit, position, ...from } });
}

/** Records that a part which the BOM does not allow there is on the board already: the unit is held until QA decides. */
export function tellFitted(
  session: Session,
  { item, station }: { item: string; station: string },
): SessionStep {
  const sending = sent(session);
  if (sending === null || sending.repair.position === null) return stepTo(session);
  const { unit, position } = sending.repair;
  return recordFact(sending.session, { type: 'part.installed', station, body: { unit, position, item } });
}

/** A repair's event was answered: what was recorded is listed, and the next question asked. */
export function settleRepair(
  session: Session,
  task: Repairing,
  { isRecorded }: { isRecorded: boolean },
): SessionStep {
  const { repair } = task;
  if (!isRecorded || repair.position === null)
    return stepTo(withTask(session, { ...task, isSent: false, repair: { ...repair, chosen: null } }));
  const source = repair.chosen?.kind === 'item' ? repair.chosen.item.item : (repair.chosen?.unit ?? null);
  const isWrong = repair.chosen?.kind === 'item' && !repair.chosen.isExpected;
  const what = repair.isRemoved ? (isWrong ? 'wrong' : 'installed') : 'removed';
  const done: Repair['done'] = [...repair.done, { position: repair.position, what, source }];
  const next: Repair =
    what === 'removed'
      ? { ...repair, done, isRemoved: true, chosen: null }
      : { ...repair, done, isRemoved: false, chosen: null, position: null };
  return stepTo(withTask(session, { ...task, isSent: false, repair: next }), {
    kind: 'signal',
    signal: 'done',
  });
}
