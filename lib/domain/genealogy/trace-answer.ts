import type { Certainty, Completeness, Counts, UsedUnit } from '@/lib/domain/genealogy/answer';

/** Units of an answer that left with one shipment. */
export type ShippedCount = { customer: string; shipment: string; certain: number; possible: number };

/**
 * A where-used answer as the trace screen shows it: what is certain and what is possible counted apart over all
 * places and relations, and the first units of the group that is looked at, narrowed to the places and relations that
 * were asked for.
 */
export type TraceAnswer = Completeness & {
  counts: Record<Certainty, Counts>;
  shown: Certainty;
  /** Units of each group at the places and with the relations that were asked for. */
  asked: Record<Certainty, number>;
  units: UsedUnit[];
  next: string | null;
  shipped: ShippedCount[];
};
