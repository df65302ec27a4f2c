import { z } from 'zod';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import {
  certaintySchema,
  completenessSchema,
  doubtSchema,
  placeSchema,
  relationSchema,
} from '@/lib/domain/genealogy/answer';

const staySchema = z.object({
  unit: z.string().meta({ description: 'The other unit.' }),
  position: z.string(),
  at: z.string(),
  by: z.string(),
  until: z.string().nullable(),
  endedBy: z.string().nullable(),
});

/** A unit's as-built record, as the wire tells it. */
export const asBuiltAnswerSchema = completenessSchema.extend({
  unit: z.string(),
  product: z.string().nullable(),
  revision: z.string().nullable(),
  place: placeSchema,
  draws: z.array(
    z.object({
      item: z.string(),
      kind: itemKindSchema.nullable(),
      part: z.string().nullable(),
      lot: z.string().nullable(),
      positions: z.array(z.string()),
      station: z.string().nullable(),
      slot: z.string().nullable(),
      at: z.string(),
      certainty: certaintySchema,
      because: z.array(doubtSchema).optional().meta({ description: 'Why it is only possible.' }),
      relation: relationSchema,
      by: z.string().meta({ description: 'Id of the event that drew.' }),
      via: z.array(z.string()).meta({ description: 'Salvages that brought it here, the last one last.' }),
    }),
  ),
  children: z.array(staySchema),
  parents: z.array(staySchema),
  containers: z.array(z.string()).meta({ description: 'Around the unit, innermost first.' }),
  holds: z.array(
    z.object({
      hold: z.string(),
      kind: z.string(),
      id: z.string(),
      reason: z.string(),
      automatic: z.boolean(),
      at: z.string(),
      releasedAt: z.string().nullable(),
      releasedBy: z.string().nullable(),
      disposition: z.string().nullable(),
    }),
  ),
  events: z.array(
    z.looseObject({
      id: z.string(),
      type: z.string(),
      at: z.string(),
      voided: z.boolean(),
      voidedBy: z.string().nullable(),
      recordedAt: z.string(),
      recordedBy: z.string(),
      flags: z.array(z.unknown()),
    }),
  ),
});
