import { isMaterial } from '@/lib/domain/gate/material-rules';
import { innerPositions, scannedLines } from '@/lib/domain/station/product-picture';
import type { ItemPicture, ScanPicture } from '@/lib/domain/station/scan-picture';
import { innerToJoin } from '@/lib/domain/station/session/inner-to-join';
import { partsToFit, processedDraft } from '@/lib/domain/station/session/processed-draft';
import { isBeyondLimits, readingsToGive, rememberReadings } from '@/lib/domain/station/session/reading-draft';
import type { JoinQuestion, Notice, Session, Task, Work } from '@/lib/domain/station/session/session';
import type { SessionContext, SessionStep } from '@/lib/domain/station/session/session-input';
import {
  followedBy,
  give,
  record,
  setAside,
  stepTo,
  takeNext,
  withTask,
} from '@/lib/domain/station/session/session-step';

type InWork = Extract<Task, { step: 'working' | 'parts' }>;
type Scanned = { code: string; scan: ScanPicture | null };

/** A scan while a result is owed: a lot or tool for this unit, a sub-assembly of it, or the next unit. */
export function meetInWork(
  session: Session,
  task: InWork,
  { code, scan }: Scanned,
  context: SessionContext,
): SessionStep {
  if (scan !== null && (scan.unit !== null || scan.serialOf.length > 0)) {
    const question = joinQuestion(task.work, scan, context);
    if (question === null) return setAside(session, code);
    const isWorkedOnHere = context.picture.products.some(({ product }) => product === question.product);
    return isWorkedOnHere
      ? stepTo(withTask(session, working(task.work, { question })), { kind: 'signal', signal: 'attention' })
      : join(session, task.work, question, context);
  }
  if (scan?.item) return takeItem(session, task, scan.item);
  if (scan?.container) return complain(session, task.work, { code: 'is_container', scanned: code });
  if (scan?.label)
    return complain(session, task.work, { code: 'is_label', scanned: code, label: scan.label });
  return setAside(session, code);
}

function working(
  work: Work,
  rest: { notice?: Notice; question?: JoinQuestion; isJoining?: boolean } = {},
): Task {
  return { step: 'working', work, notice: null, question: null, isJoining: false, ...rest };
}

function complain(session: Session, work: Work, notice: Notice): SessionStep {
  return stepTo(withTask(session, working(work, { notice })), { kind: 'signal', signal: 'attention' });
}

function takeItem(session: Session, task: InWork, item: ItemPicture): SessionStep {
  const { work } = task;
  const { product } = work.about;
  const isOnBom =
    product !== null && item.part !== null && scannedLines(product).some((line) => line.part === item.part);
  if (isOnBom && item.part !== null) {
    const lot = { product: product.product, revision: product.revision, part: item.part, item: item.item };
    const others = session.lots.filter(
      (each) => each.part !== lot.part || each.product !== lot.product || each.revision !== lot.revision,
    );
    const without = work.without.filter((part) => part !== lot.part);
    const changed = { ...work, without };
    const next: Task = task.step === 'parts' ? { step: 'parts', work: changed } : working(changed);
    return stepTo(withTask({ ...session, lots: [...others, lot] }, next), { kind: 'signal', signal: 'done' });
  }
  if (isMaterial(item.kind))
    return complain(session, work, { code: 'not_on_bom', scanned: item.item, part: item.part });
  const isTaken = work.tools.some((tool) => tool.item === item.item);
  const tools = isTaken ? work.tools : [...work.tools, { item: item.item }];
  return stepTo(withTask(session, working({ ...work, tools })), { kind: 'signal', signal: 'done' });
}

/** The free position of the unit in work that a scanned unit fits, or null. */
function joinQuestion(work: Work, scan: ScanPicture, { may }: SessionContext): JoinQuestion | null {
  const { product, unit } = work.about;
  if (product === null || !may('event:unit.joined')) return null;
  const names = scan.unit === null ? scan.serialOf.map((row) => row.product) : [scan.unit.product];
  const taken = [...(unit?.joined ?? []), ...work.joined].map((row) => row.position);
  const free = innerPositions(product).find(
    ({ inner, position }) => names.includes(inner) && !taken.includes(position),
  );
  return free === undefined ? null : { unit: scan.code, position: free.position, product: free.inner };
}

/** Records that a sub-assembly went into the unit in work; a result waits until that is known to be recorded. */
export function join(
  session: Session,
  work: Work,
  { unit, position }: JoinQuestion,
  { picture }: SessionContext,
): SessionStep {
  const joined = [...work.joined, { unit, position }];
  const task = working({ ...work, joined }, { isJoining: true });
  return record(withTask(session, task), {
    type: 'unit.joined',
    station: picture.station.code,
    body: { unit, into: work.unit, position },
  });
}

/**
 * Gives the pass, unless a reading is beyond its limits, a part that is usual here has no lot yet, or a sub-assembly is
 * not in: then it is asked for. `isBeyond` and `isWithout`: somebody has said that it passes all the same.
 */
export function pass(
  session: Session,
  work: Work,
  context: SessionContext,
  { isWithout = false, isBeyond = false }: { isWithout?: boolean; isBeyond?: boolean },
): SessionStep {
  if (!isBeyond && isBeyondLimits(readingsToGive(work, session, context.picture))) {
    const notice: Notice = { code: 'beyond_limits', scanned: work.unit };
    return stepTo(withTask(session, working(work, { notice })), { kind: 'signal', signal: 'stop' });
  }
  const isAllThere =
    partsToFit(work, session, context).every((row) => row.item !== null || row.isWithout) &&
    innerToJoin(work, context.picture).length === 0;
  if (!isAllThere && !isWithout)
    return stepTo(withTask(session, { step: 'parts', work }), { kind: 'signal', signal: 'attention' });
  const draft = processedDraft({ work, result: 'pass', session, context });
  return followedBy(give(rememberReadings(session, work), 'pass', work.unit, draft), takeNext);
}
