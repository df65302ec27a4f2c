import type { Verdict } from '@/lib/domain/gate/question';
import type { Action } from '@/lib/domain/people/permissions';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import type { ProductPicture } from '@/lib/domain/station/product-picture';
import type { ScanCommand } from '@/lib/domain/station/scan-command';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import type { ReadingDraft } from '@/lib/domain/station/session/reading-draft';
import type { Problem, ResumedWork, Session, Silence } from '@/lib/domain/station/session/session';
import type { StationPicture } from '@/lib/domain/station/station-picture';

/** What happens to a session: scans, answers, presses. */
export type SessionInput =
  | { kind: 'scanned'; code: string }
  | {
      kind: 'answered';
      unit: string;
      answer: Verdict;
      scan: ScanPicture | null;
      product: ProductPicture | null;
    }
  | { kind: 'unanswered'; unit: string; why: Silence }
  /** What the gate says of a unit that only waits; null without an answer. */
  | { kind: 'answered_aside'; unit: string; answer: Verdict | null }
  | { kind: 'ticked' }
  | { kind: 'identified'; code: string; scan: ScanPicture | null }
  /**
   * `kept`: it is in the device's log, which is as good as recorded while the server is away; `after_kept`: and now the
   * server has answered.
   */
  | { kind: 'settled'; tag: number; isRecorded: boolean; how?: 'kept' | 'after_kept' }
  | { kind: 'refused'; problem: Problem }
  | { kind: 'resumed'; unit: string | null; resumed: ResumedWork | null; waiting: string[] }
  | { kind: 'pressed'; press: Press };

/** Buttons of the station's screen; commands can also be scanned. */
export type Press =
  | { button: ScanCommand }
  | { button: 'retry' }
  | { button: 'go_on' }
  | { button: 'start'; product: string; revision: string }
  | { button: 'set_start'; order: string; boardLot: string }
  | { button: 'pass_without' }
  /** A pass in spite of a reading beyond its limits. */
  | { button: 'pass_beyond' }
  | { button: 'reading'; reading: ReadingDraft }
  | { button: 'forget_lot'; product: string; revision: string; part: string }
  | { button: 'defect'; code: string }
  | { button: 'position'; position: string | null }
  | { button: 'another_defect' }
  | { button: 'remove_defect'; index: number }
  | { button: 'note'; note: string }
  | { button: 'record_fail' }
  | { button: 'join' }
  | { button: 'not_join' }
  | { button: 'drop_waiting'; unit: string }
  | { button: 'sign'; meaning: string }
  | { button: 'signing' }
  | { button: 'repair_position'; position: string }
  | { button: 'removed'; reason: string }
  /** The wrong part that was scanned is on the board already. */
  | { button: 'fitted_already' }
  | { button: 'donor_position'; position: string }
  | { button: 'leave_empty' };

/** What the session's surroundings know. */
export type SessionContext = {
  picture: StationPicture;
  may: (action: Action) => boolean;
  /** Now, RFC 3339 with the device's offset. */
  now: string;
};

/** What the device has to do after a step of the session. */
export type SessionEffect =
  | { kind: 'ask'; unit: string }
  | { kind: 'ask_aside'; unit: string }
  | { kind: 'identify'; code: string }
  /** `isFact`: it has happened whatever it breaks, and is flagged instead of refused. */
  | { kind: 'record'; tag: number; draft: EventDraft; isFact?: true }
  | { kind: 'signal'; signal: 'go' | 'stop' | 'attention' | 'done' }
  | { kind: 'forget'; id: string }
  /** Gives the input `ticked` after so many milliseconds. */
  | { kind: 'tick'; afterMs: number };

/** A session after an input, with what is to be done. */
export type SessionStep = { session: Session; effects: SessionEffect[] };
