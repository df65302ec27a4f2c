import type { Refusal } from '@/lib/domain/gate/refusals';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import type { ItemPicture, ScanPicture } from '@/lib/domain/station/scan-picture';
import type { ScannedLabel } from '@/lib/domain/station/scanned-label';
import type { SlotPicture } from '@/lib/domain/station/slot-picture';

/** Where an item stood before it came here. */
export type LeftPlace = { station: string; slot: string };

/** What was done last; `left` are the places that an item left for its new one. */
export type ChangeoverDone = {
  what: 'mounted' | 'spliced' | 'unmounted' | 'counted';
  item: string;
  slot: string;
  left?: LeftPlace[];
  /** What was counted. */
  quantity?: number;
};

/** What came out of a slot, with the quantity last known of it. */
export type ChangeoverReturned = { item: string; slot: string; knownQuantity: number | null };

/** A scan that means nothing here. */
export type ChangeoverNotice =
  | { code: 'is_unit' | 'is_container' | 'unanswered'; scanned: string }
  | { code: 'is_label'; scanned: string; label: ScannedLabel }
  | { code: 'other_station'; scanned: string; station: string }
  | { code: 'nothing_to_splice'; scanned: string };

/**
 * The item in the hand is joined to the end of the reel in its slot, instead of going in for it. `greyUnits` more units
 * may still take from that end; null: nobody counted them, and any may until the slot is changed.
 */
export type Splice = { greyUnits: number | null };

/** The state of the changeover screen; plain data, made by `advanceChangeover` alone. */
export type Changeover = {
  /** The item in the hand, waiting for its slot. */
  item: ItemPicture | null;
  splice: Splice | null;
  /** The slot that was chosen first, waiting for its item. */
  slot: string | null;
  /** What came out of a slot just now and may be counted. */
  returned: ChangeoverReturned | null;
  done: ChangeoverDone | null;
  stop: { item: string; slot: string | null; reasons: Refusal[] } | null;
  notice: ChangeoverNotice | null;
  /** The fact that the server has not answered yet. */
  sending: { done: ChangeoverDone; replaced: ChangeoverReturned | null } | null;
  lookup: string | null;
  held: string[];
  /** What was scanned behind a no-go before anybody had seen it; it was not taken. */
  untaken: string[];
};

/** Before the first scan. */
export const NEW_CHANGEOVER: Changeover = {
  item: null,
  splice: null,
  slot: null,
  returned: null,
  done: null,
  stop: null,
  notice: null,
  sending: null,
  lookup: null,
  held: [],
  untaken: [],
};

/** What happens at a changeover. */
export type ChangeoverInput =
  | { kind: 'scanned'; code: string }
  | { kind: 'identified'; code: string; scan: ScanPicture | null }
  | { kind: 'settled'; reasons: Refusal[] | null }
  | { kind: 'chose_slot'; slot: string }
  | { kind: 'splicing'; splice: Splice | null }
  | { kind: 'took_out'; slot: string }
  | { kind: 'counted'; quantity: number; method: string }
  | { kind: 'cleared' };

/** What the screen's surroundings know. */
export type ChangeoverContext = {
  station: string;
  slots: readonly SlotPicture[];
  stations: readonly string[];
};

/** What the device has to do. */
export type ChangeoverEffect =
  | { kind: 'identify'; code: string }
  /** Facts in their order; the answer to the last one settles. */
  | { kind: 'record'; drafts: EventDraft[] }
  | { kind: 'signal'; signal: 'go' | 'stop' | 'attention' | 'done' };

/** A changeover after an input, with what is to be done. */
export type ChangeoverStep = { state: Changeover; effects: ChangeoverEffect[] };
