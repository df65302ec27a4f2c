/**
 * A moment of the record: what had arrived up to a position of the log, of what had happened by a time (microseconds,
 * infinite for no limit). A void counts from its arrival, whenever it happened: correction is addition.
 */
export type Moment = { knownTo: number; untilUs: number };
