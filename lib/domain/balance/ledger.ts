/** Two bounds, both inclusive. */
export type Range = { min: number; max: number };

/** A moment at which an event says how many pieces are left of a reel; low and high widen it by its clock's doubt. */
export type Anchor = {
  event: string;
  item: string;
  atUs: number;
  lowUs: number;
  highUs: number;
  left: number;
  /** Whether the reel was taken out of use with it: nothing can have been taken from it since. */
  isFinal: boolean;
};

/** A reel's stay in a slot, as the record has it; `toUs` is infinite while it lasts. */
export type ReelStay = {
  event: string;
  item: string;
  station: string;
  slot: string;
  fromUs: number;
  toUs: number;
};

/** A reel between two moments at which it was known how many pieces were left; `to` is null since the last one. */
export type Period = { item: string; from: Anchor; to: Anchor | null };

/** A unit at a station while a reel stood in a slot there. */
export type ReelPass = {
  unit: string;
  lowUs: number;
  highUs: number;
  /** Pieces that the BOM puts on the unit from this slot. */
  pieces: number;
  /** Whether it lies within the stay without any doubt. */
  isCertain: boolean;
};

/** A period with what the record says was used in it, and what follows from that. */
export type Balance = Period & {
  part: string | null;
  /** Share of the use that may be lost at pick-up. */
  attrition: number;
  /** Pieces that the record gives to units: at least the certain draws, at most the possible ones too. */
  used: Range;
  /**
   * Pieces that the record puts on this reel and that came from another one; negative where other reels' units drew
   * from it. The least and the most that the two counts allow, with any loss from none to the whole attrition.
   */
  moved: Range;
  verdict: 'agrees' | 'surplus' | 'deficit';
};

/** Everything that the search for a missing change looks at: stays in order of station, slot, time and event. */
export type Ledger = { balances: readonly Balance[]; stays: readonly ReelStay[] };
