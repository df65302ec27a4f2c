/** What the record proves, and what it cannot exclude (domain.md, Words). */
export type Certainty = 'certain' | 'possible';

/** How a unit stands to an item, strongest first (wire.md, Relation). */
export type Relation = 'contains' | 'formerly' | 'touched';

/** Where a unit is now (wire.md, Place). */
export type Place =
  | { kind: 'station'; station: string | null }
  | { kind: 'stock' }
  | { kind: 'container'; container: string }
  | { kind: 'shipped'; container: string; shipment: string; customer: string }
  | { kind: 'returned' }
  | { kind: 'scrapped' };

/** The conditions and filters of `GET /api/trace/where-used`; times are RFC 3339. */
export type WhereUsedQuery = {
  item?: string;
  lot?: string;
  part?: string;
  station?: string;
  operator?: string;
  from?: string;
  to?: string;
  place?: string[];
  relation?: string[];
  certainty?: string[];
};

/** One row of the where-used answer. */
export type WhereUsedUnit = {
  unit: string;
  product: string | null;
  revision: string | null;
  certainty: Certainty;
  relation: Relation;
  place: Place | null;
  through: string[];
};

/** The where-used answer without what only a server knows (`asOf`, `complete`, `owing`, `next`). */
export type WhereUsedAnswer = {
  counts: {
    units: number;
    certain: number;
    possible: number;
    contains: number;
    formerly: number;
    touched: number;
    byPlace: Record<Place['kind'], number>;
  };
  units: WhereUsedUnit[];
};

/** One draw of the as-built answer; `via` lists the salvages that brought it here, the last one last. */
export type AsBuiltDraw = {
  item: string;
  kind: string | null;
  part: string | null;
  lot: string | null;
  positions: string[];
  station: string | null;
  slot: string | null;
  at: string;
  certainty: Certainty;
  relation: Relation;
  by: string;
  via: string[];
};

/** A join seen from one of its ends: the other unit, from when, and until when (null: still). */
export type AsBuiltJoin = {
  unit: string;
  position: string;
  at: string;
  by: string;
  until: string | null;
  endedBy: string | null;
};

/** A hold that an event placed on the unit itself; automatic holds are the server's judgement. */
export type AsBuiltHold = {
  hold: string;
  reason: string;
  at: string;
  releasedBy: string | null;
  disposition: string | null;
};

/** The as-built answer; `containers` are those now around the unit, innermost first. */
export type AsBuiltAnswer = {
  unit: string;
  product: string | null;
  revision: string | null;
  draws: AsBuiltDraw[];
  children: AsBuiltJoin[];
  parents: AsBuiltJoin[];
  containers: string[];
  place: Place | null;
  holds: AsBuiltHold[];
  events: { id: string; type: string; at: string; voided: boolean }[];
};
