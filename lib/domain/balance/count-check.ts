import type { Range } from '@/lib/domain/balance/ledger';

/** How a change was missed: the other reel was scanned too late or too early, never, or nobody knows which it was. */
export type Story = 'late' | 'early' | 'never' | 'unknown';

/** An interval in which a change was probably not scanned, with the reels on both sides. */
export type MissedChange = {
  story: Story;
  station: string;
  slot: string;
  /** The reel that the record names, and the one that may have stood there; null when it is not known. */
  recorded: string;
  other: string | null;
  from: string;
  to: string;
  units: number;
};

/** What must be left of a reel at a time when nothing was lost. */
export type LeftPoint = { at: string; left: number };

/** A reel whose counts disagree with its use. */
export type DisagreeingCount = {
  item: string;
  part: string | null;
  verdict: 'surplus' | 'deficit';
  from: LeftPoint;
  /** The count that disagrees; null when more was used since the last one than there was. */
  to: LeftPoint | null;
  attrition: number;
  used: Range;
  expected: Range;
  /** Pieces beyond what the use and its allowance explain. */
  pieces: number;
  missed: MissedChange[];
  /** Remainder after each change of it, thinned out. */
  curve: LeftPoint[];
};

/** The page of counts that disagree. */
export type CountCheck = {
  /** Whether the plant states an attrition for any part: without one nothing is weighed. */
  isWeighed: boolean;
  /** Begin of the time that is looked at. */
  since: string;
  reels: number;
  disagreeing: DisagreeingCount[];
  now: string;
};
