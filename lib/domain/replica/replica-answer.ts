import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import { stationPictureSchema } from '@/lib/domain/station/station-picture';
import { unitStateSchema } from '@/lib/domain/units/unit-state';

/** Most units that a tablet is sent at once. */
export const REPLICA_UNITS_MAX = 50_000;
/** Units that come to them by changes until a tablet asks for the most useful ones anew. */
export const REPLICA_GROWTH_MAX = 5000;

/**
 * How far a reader of the record has come: the last position in the log and in its judgements, and the version of the
 * plant. One writer commits positions in order, so nothing can appear later below a position that was read.
 */
export const replicaCursorSchema = z.object({
  event: z.int().min(0),
  judgement: z.int().min(0),
  plant: z.int().min(0),
});
export type ReplicaCursor = z.infer<typeof replicaCursorSchema>;

const positionSchema = z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER);

/** What a tablet needs for its station: everything, or what changed since its cursor. */
export const replicaQuestionSchema = z.strictObject({
  station: codeSchema,
  event: positionSchema.optional(),
  judgement: positionSchema.optional(),
  plant: positionSchema.optional(),
});

const holdSchema = z.object({ hold: z.string(), reason: z.string() });

/** A unit as the gate at a station asks for it. */
export const replicaUnitSchema = z.object({
  unit: z.string(),
  state: unitStateSchema,
  /** Its last event that counts (microseconds, id), or null. */
  lastAtUs: z.number().nullable(),
  outer: z.string().nullable(),
  /** The shipment that its container left with, or null. */
  shipment: z.string().nullable(),
  holds: z.array(holdSchema),
});
export type ReplicaUnit = z.infer<typeof replicaUnitSchema>;

/** An item in a slot of the station, with the holds on it and on its lot. */
const replicaItemSchema = z.object({
  slot: z.string(),
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
  isRetired: z.boolean(),
  holds: z.array(holdSchema.extend({ kind: z.enum(['item', 'lot']), id: z.string() })),
});

/** The server's answer: `isWhole` replaces everything, else units that changed, and the plant if it did. */
export const replicaAnswerSchema = z.object({
  cursor: replicaCursorSchema,
  isWhole: z.boolean(),
  plant: plantFileSchema.nullable(),
  station: stationPictureSchema,
  items: z.array(replicaItemSchema),
  units: z.array(replicaUnitSchema),
});
export type ReplicaAnswer = z.infer<typeof replicaAnswerSchema>;
