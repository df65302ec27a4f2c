import type { Refusal } from '@/lib/domain/gate/refusals';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import type { ScannedLabel } from '@/lib/domain/station/scanned-label';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';

/** What a packer is about: putting units in, taking out, or putting the container into another one. */
export type PackMode = 'pack' | 'take_out' | 'nest';

/** What was done last, or is being done. */
export type PackDone =
  /** `isNew`: nothing was ever packed into the container before. */
  | { what: 'packed' | 'unpacked'; unit: string; container: string; isNew?: true }
  | { what: 'nested' | 'unnested'; container: string; other: string; isNew?: true }
  | { what: 'shipped'; container: string; shipment: string };

/** A scan that needs a word: something that cannot be packed, or a code that nobody knows. */
export type PackNotice = {
  code:
    | 'is_item'
    | 'is_label'
    | 'already_here'
    | 'unknown'
    | 'unknown_outer'
    | 'no_container'
    | 'not_packed'
    | 'unanswered'
    | 'other_unit_waits';
  scanned: string;
  label?: ScannedLabel;
};

/** The state of the packing screen; plain data, made by `advancePackDesk` alone. */
export type PackDesk = {
  mode: PackMode;
  /** The container that is open: units go into it without scanning it again. */
  container: string | null;
  /** Whether the open container has never had anything in it: the first thing that goes in makes it. */
  isNew: boolean;
  /** Units that wait for their container, in the order of their scans. */
  units: string[];
  done: PackDone | null;
  stop: { about: PackDone; reasons: Refusal[] } | null;
  notice: PackNotice | null;
  /** The last unit that was scanned, when it lacks something or has something on hold in it: it may go, but somebody must know. */
  caution: { unit: string; cautions: UnitCaution[] } | null;
  /** The fact that the server has not answered yet. */
  sending: PackDone | null;
  lookup: string | null;
  held: string[];
};

/** A packing screen before the first scan. */
export const NEW_PACK_DESK: PackDesk = {
  mode: 'pack',
  container: null,
  isNew: false,
  units: [],
  done: null,
  stop: null,
  notice: null,
  caution: null,
  sending: null,
  lookup: null,
  held: [],
};

/** What happens at a packing screen. */
export type PackInput =
  | { kind: 'scanned'; code: string }
  | { kind: 'identified'; code: string; scan: ScanPicture | null }
  | { kind: 'settled'; reasons: Refusal[] | null }
  | { kind: 'opened'; container: string }
  /** The open container goes into a new one, on purpose. */
  | { kind: 'nested_in_new'; into: string }
  | { kind: 'closed' }
  | { kind: 'mode'; mode: PackMode }
  | { kind: 'put_aside' }
  /** What was scanned is no container: whatever waited for one still does. */
  | { kind: 'forgot' }
  /** What was put into a new container last comes out again: that code was no container. */
  | { kind: 'undone' }
  | { kind: 'took_out'; unit: string }
  | { kind: 'took_container_out'; container: string }
  | { kind: 'ship'; shipment: string; customer: string; destination: string };

/** What the device has to do. */
export type PackEffect =
  | { kind: 'identify'; code: string }
  | { kind: 'record'; draft: EventDraft }
  | { kind: 'signal'; signal: 'go' | 'stop' | 'attention' | 'done' };

/** A packing screen after an input, with what is to be done. */
export type PackStep = { state: PackDesk; effects: PackEffect[] };
