import type { EventType } from '@/lib/domain/events/catalogue';
import type { Provisional } from '@/lib/domain/gate/question';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { ProductPicture } from '@/lib/domain/station/product-picture';
import type { ItemPicture, ScanPicture, UnitPicture } from '@/lib/domain/station/scan-picture';
import type { ScannedLabel } from '@/lib/domain/station/scanned-label';
import type { ReadingDraft } from '@/lib/domain/station/session/reading-draft';
import type { ProductName, UsualReading } from '@/lib/domain/station/station-picture';

/** Something wrong on the unit in work: at a position, or at none. */
export type DefectDraft = { code: string; position: string | null };

/** The lot or other item that is used for a part of a product until another one is scanned. */
export type RememberedLot = ProductName & { part: string; item: string };

/** A tool or carrier that was scanned for one unit; it has no position. */
export type Tool = { item: string };

/** What is known of the unit in work; pictures are null when they could not be read. */
export type About = {
  scan: ScanPicture | null;
  unit: UnitPicture | null;
  product: ProductPicture | null;
  /** What speaks for caution when no server gave the verdict. */
  provisional?: Provisional;
};

/** A unit with a go, for which a result is owed. `startedAt` is the moment of the go. */
export type Work = {
  unit: string;
  startedAt: string;
  about: About;
  tools: Tool[];
  /** Positions and units joined since the go. */
  joined: { unit: string; position: string }[];
  /** Parts that the operator said are not fitted this time. */
  without: string[];
  defects: DefectDraft[];
  note: string;
  /** What was typed of what is measured. */
  readings: ReadingDraft[];
};

/** Why an answer did not come. */
export type Silence = 'unreachable' | 'signed_out' | 'not_permitted';

/** A scanned unit that could be a sub-assembly of the unit in work, or the next unit. */
export type JoinQuestion = { unit: string; position: string; product: string };

/** Where a repair stands: which position, what to fit there. */
export type Repair = {
  unit: string;
  about: About;
  position: string | null;
  /** A position that the BOM does not name, until somebody has said that it is meant. */
  strange: string | null;
  /** Null while the position or the part is asked for; else what was scanned and waits for a decision. */
  chosen: { kind: 'item'; item: ItemPicture; isExpected: boolean } | { kind: 'donor'; unit: string } | null;
  isRemoved: boolean;
  done: { position: string; what: 'removed' | 'installed' | 'wrong'; source: string | null }[];
};

/** What stands on the screen of a station: one thing at a time. */
export type Task =
  | { step: 'idle' }
  | { step: 'asking'; unit: string; resumed: ResumedWork | null }
  | { step: 'unanswered'; unit: string; why: Silence; resumed: ResumedWork | null }
  | { step: 'stopped'; unit: string; reasons: Refusal[]; about: About; shownAt: string }
  | { step: 'repeat'; work: Work; shownAt: string }
  | { step: 'new'; unit: string; options: ProductName[]; isSent: boolean }
  | { step: 'working'; work: Work; notice: Notice | null; question: JoinQuestion | null; isJoining: boolean }
  | { step: 'parts'; work: Work }
  | { step: 'defect'; work: Work; notice: Notice | null }
  /** `strange`: a position that the BOM does not name, until somebody has said that it is meant. */
  | { step: 'position'; work: Work; code: string; strange: string | null }
  | { step: 'confirming'; work: Work }
  | { step: 'signing'; unit: string; about: About; isSent: boolean }
  | { step: 'repairing'; repair: Repair; notice: Notice | null; isSent: boolean };

/** The unit that a task is about, or null. */
export function unitInTask(task: Task): string | null {
  if ('work' in task) return task.work.unit;
  if ('repair' in task) return task.repair.unit;
  return 'unit' in task ? task.unit : null;
}

/** Something that was scanned and could not be used. */
export type Notice = {
  code:
    | 'not_on_bom'
    | 'is_container'
    | 'is_label'
    | 'not_an_item'
    | 'part_still_on'
    | 'already_in_work'
    | 'beyond_limits';
  scanned: string;
  part?: string | null;
  label?: ScannedLabel;
};

/** A unit that was scanned while another one is in work, with its own verdict; null while that is asked for. */
export type Aside = {
  unit: string;
  verdict: 'unanswered' | { go: boolean; reasons: Refusal[]; provisional?: Provisional } | null;
};

/** What a reload must not lose of the unit in work. */
export type ResumedWork = {
  startedAt: string;
  defects: DefectDraft[];
  note: string;
  readings: ReadingDraft[];
  isFailing: boolean;
};

/** A result that was given, by the tag of its event; `answer` is null while the server has not said anything. */
export type Given = {
  tag: number;
  unit: string;
  what: 'pass' | 'fail' | 'signed' | 'started';
  answer: 'recorded' | 'refused' | 'kept' | null;
};

/** An event that the server refused after the screen had gone on; it stays until somebody has read it. */
export type Problem = { id: string; unit: string; type: EventType; reasons: Refusal[] };

/** The state of a station's screen; plain data, made by `advanceSession` alone. */
export type Session = {
  task: Task;
  /** Units scanned while another one was in work, in order. */
  waiting: string[];
  /** The last of them, until somebody has seen that it is not the one in work. */
  aside: Aside | null;
  /** A scanned code whose meaning is asked for. */
  lookup: string | null;
  /** Scans and commands that came while something was asked; taken up in order as soon as it is answered. */
  held: string[];
  lots: RememberedLot[];
  /** What was measured here from this tablet, by product. */
  readings: UsualReading[];
  order: string;
  boardLot: string;
  given: Given | null;
  problems: Problem[];
  nextTag: number;
};

/** A station before the first scan. */
export const NEW_SESSION: Session = {
  task: { step: 'idle' },
  waiting: [],
  aside: null,
  lookup: null,
  held: [],
  lots: [],
  readings: [],
  order: '',
  boardLot: '',
  given: null,
  problems: [],
  nextTag: 1,
};
