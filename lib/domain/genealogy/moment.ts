/**
 * A moment of the record: what had arrived up to a position of the log, which was at `knownAtUs`, of what had happened
 * by `untilUs` (microseconds, infinite for no limit). A void counts from its arrival, whenever it happened: correction
 * is addition.
 */
export type Moment = { knownTo: number; knownAtUs: number; untilUs: number };
