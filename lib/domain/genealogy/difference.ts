import { z } from 'zod';
import { eventSchema } from '@/lib/domain/events/catalogue';
import {
  certaintySchema,
  completenessSchema,
  countsSchema,
  relationSchema,
} from '@/lib/domain/genealogy/answer';

const standingSchema = z.object({ certainty: certaintySchema, relation: relationSchema });

/** How surely and how a unit is in an answer. */
export type Standing = z.infer<typeof standingSchema>;

/** How every unit of an answer stands in it. */
export type Standings = ReadonlyMap<string, Standing>;

/** What became of a unit: it joined the answer, left it, or stands in it more or less surely, or in another relation. */
export const CHANGE_KINDS = ['joined', 'left', 'certainty', 'relation'] as const;
const changeKindSchema = z.enum(CHANGE_KINDS);
export type ChangeKind = z.infer<typeof changeKindSchema>;

/** An event, or events that were not told apart: how many, and when the first and the last of them arrived. */
const causeSchema = z.union([
  z.object({ event: z.string().meta({ description: 'Id of the event that did it.' }) }),
  z.object({ among: z.number(), from: z.string(), to: z.string() }),
]);
export type Cause = z.infer<typeof causeSchema>;

const changeSchema = z.object({
  unit: z.string(),
  kind: changeKindSchema,
  before: standingSchema.nullable().meta({ description: 'Null: not in the answer.' }),
  after: standingSchema.nullable().meta({ description: 'Null: not in the answer.' }),
  by: causeSchema,
});
export type Change = z.infer<typeof changeSchema>;

const causingEventSchema = z.object({
  event: eventSchema,
  recordedAt: z.string(),
  recordedBy: z.string(),
  voids: eventSchema.nullable().meta({ description: 'The event that it voids.' }),
  isRefused: z.boolean().meta({ description: 'It was refused: nothing but its number arrived.' }),
  changesOwing: z.boolean().meta({ description: 'It opened or closed a gap in the numbers of its device.' }),
});
/** An event that changed an answer, with its arrival. */
export type CausingEvent = z.infer<typeof causingEventSchema>;

const sizeSchema = countsSchema.pick({ units: true, certain: true, possible: true });
export type AnswerSize = z.infer<typeof sizeSchema>;

const kindCountsSchema = z.object({
  joined: z.number(),
  left: z.number(),
  certainty: z.number(),
  relation: z.number(),
});
export type KindCounts = z.infer<typeof kindCountsSchema>;

/** What happened to an answer between two moments, as the wire tells it. */
export const differenceSchema = completenessSchema.extend({
  since: z.string(),
  until: z.string(),
  before: sizeSchema,
  after: sizeSchema,
  counts: kindCountsSchema.meta({ description: 'All changes, listed or not.' }),
  leavesOut: z.boolean().meta({
    description: 'Doubts by counts are in neither answer: the reels are too many to weigh at every step.',
  }),
  late: z.number().meta({ description: 'Events between that can bear on the answer.' }),
  changes: z.array(changeSchema).meta({ description: 'Sorted by unit, up to `limit`.' }),
  events: z.array(causingEventSchema).meta({ description: 'What did it, in the order of arrival.' }),
});
export type Difference = z.infer<typeof differenceSchema>;

/** A change without what did it. */
export type BareChange = Omit<Change, 'by'>;

/** Units whose standing differs between two answers, sorted by unit. */
export function changesBetween(before: Standings, after: Standings): BareChange[] {
  return [...new Set([...before.keys(), ...after.keys()])].sort(byCode).flatMap((unit) => {
    const [old, now] = [before.get(unit) ?? null, after.get(unit) ?? null];
    const kind = kindOf(old, now);
    return kind === null ? [] : [{ unit, kind, before: old, after: now }];
  });
}

function kindOf(before: Standing | null, after: Standing | null): ChangeKind | null {
  if (before === null) return after === null ? null : 'joined';
  if (after === null) return 'left';
  if (before.certainty !== after.certainty) return 'certainty';
  return before.relation === after.relation ? null : 'relation';
}

/** How many changes are of which kind. */
export function countKinds(changes: readonly BareChange[]): KindCounts {
  const counts = { joined: 0, left: 0, certainty: 0, relation: 0 };
  for (const { kind } of changes) counts[kind] += 1;
  return counts;
}

/** How many units an answer has, and how surely. */
export function sizeOf(standings: Standings): AnswerSize {
  const certain = [...standings.values()].filter(({ certainty }) => certainty === 'certain').length;
  return { units: standings.size, certain, possible: standings.size - certain };
}

function byCode(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0;
}
