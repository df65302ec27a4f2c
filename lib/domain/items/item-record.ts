import type { Range } from '@/lib/domain/balance/ledger';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import type { ItemKind, Result } from '@/lib/domain/events/vocabulary';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';

/** A stay of an item in a slot; `until` is null while it lasts. */
export type SlotStay = { event: string; station: string; slot: string; from: string; until: string | null };

/** A hold on an item or on its lot. */
export type ItemHold = {
  hold: string;
  kind: string;
  id: string;
  reason: string;
  automatic: boolean;
  at: string;
  releasedAt: string | null;
  disposition: string | null;
};

/** What an item is; null where it was never received. */
type ItemFactsShown = {
  kind: ItemKind;
  part: string | null;
  description: string | null;
  lot: string | null;
  supplier: string | null;
  quantity: number | null;
  countedAt: string | null;
  inspected: Result | null;
  isRetired: boolean;
  /** Pieces that must be left now by the last count and the use since; null where nothing is weighed. */
  expected: Range | null;
};

/** An item's page. `now` is the server's clock, up to which an open stay has lasted. */
export type ItemRecord = {
  item: string;
  facts: ItemFactsShown | null;
  holds: ItemHold[];
  stays: SlotStay[];
  history: RecordedEvent[];
  used: TraceAnswer;
  now: string;
};

/** An item in the list of its lot. */
type LotItem = {
  item: string;
  kind: ItemKind;
  part: string | null;
  supplier: string | null;
  quantity: number | null;
  isRetired: boolean;
  inspected: Result | null;
};

/** A lot's page. */
export type LotRecord = { lot: string; items: LotItem[]; holds: ItemHold[]; used: TraceAnswer };
