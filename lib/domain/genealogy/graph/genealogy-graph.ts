import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { ITEM_KINDS, itemKindSchema } from '@/lib/domain/events/vocabulary';
import {
  certaintySchema,
  completenessSchema,
  placeSchema,
  relationSchema,
} from '@/lib/domain/genealogy/answer';
import { instantParameter } from '@/lib/domain/genealogy/question';

/** Most nodes that an answer can have, and how many it has where nobody asks for more or fewer. */
export const NODES_MAX = 5000;
const NODES_DEFAULT = 2000;

/** Query of genealogy: a unit, the moment about which the record is asked, and how many nodes are wanted. */
export const genealogyQuestionSchema = z.strictObject({
  unit: codeSchema,
  at: instantParameter.optional(),
  limit: z.coerce.number().int().min(1).max(NODES_MAX).default(NODES_DEFAULT),
});
export type GenealogyQuestion = z.infer<typeof genealogyQuestionSchema>;

/** On which side of the unit that was asked for a node is; one unit can be on both, by different stories. */
const sideSchema = z.enum(['upstream', 'root', 'downstream']);
export type Side = z.infer<typeof sideSchema>;

const LEFT_OUT_KINDS = [...ITEM_KINDS, 'item', 'unit', 'work', 'person', 'container', 'shipment'] as const;
const leftOutKindSchema = z.enum(LEFT_OUT_KINDS);
/** What was left out: an item by its kind (`item` where that is not known), anything else by what it is. */
export type LeftOutKind = z.infer<typeof leftOutKindSchema>;

const common = {
  id: z.string(),
  side: sideSchema,
  more: z
    .array(z.object({ kind: leftOutKindSchema, count: z.number() }))
    .meta({ description: 'Neighbours that the limit left out, with everything behind them.' }),
};

const genealogyNodeSchema = z.discriminatedUnion('kind', [
  z.object({
    ...common,
    kind: z.literal('unit'),
    code: z.string(),
    product: z.string().nullable(),
    revision: z.string().nullable(),
    place: placeSchema,
    isFollowed: z.boolean().meta({ description: 'False where its own record was too far away to be read.' }),
  }),
  z.object({
    ...common,
    kind: z.literal('work'),
    unit: z.string(),
    station: z.string().nullable().meta({ description: 'Null for what was done at no station.' }),
    operation: z.string().nullable(),
    from: z.string(),
    to: z.string(),
    failed: z.number().meta({ description: 'Results there that were a fail.' }),
  }),
  z.object({
    ...common,
    kind: z.literal('item'),
    code: z.string(),
    itemKind: itemKindSchema.nullable(),
    part: z.string().nullable(),
    lot: z.string().nullable(),
  }),
  z.object({ ...common, kind: z.literal('person'), code: z.string(), name: z.string().nullable() }),
  z.object({ ...common, kind: z.literal('container'), code: z.string() }),
  z.object({ ...common, kind: z.literal('shipment'), code: z.string(), customer: z.string() }),
]);
export type GenealogyNode = z.infer<typeof genealogyNodeSchema>;

const LINKS = ['draw', 'person', 'work', 'inside', 'salvage', 'packed', 'shipped'] as const;
const genealogyEdgeSchema = z.object({
  from: z.string(),
  to: z.string().meta({ description: 'Edges point downstream: from what went in to what it went into.' }),
  link: z.enum(LINKS),
  relation: relationSchema.nullable(),
  certainty: certaintySchema,
  positions: z.array(z.string()),
  slots: z.array(z.string()),
});
export type GenealogyEdge = z.infer<typeof genealogyEdgeSchema>;

/** Where a unit came from and where it went, as nodes and edges. */
export type GenealogyGraph = { nodes: GenealogyNode[]; edges: GenealogyEdge[] };

/** The answer to "what is it made of, and what was it made into?". */
export const genealogyAnswerSchema = completenessSchema.extend({
  unit: z.string(),
  at: z.string().nullable(),
  left: z.number().meta({ description: 'How many nodes the limit left out.' }),
  nodes: z.array(genealogyNodeSchema).meta({ description: 'The unit itself first, then the nearest ones.' }),
  edges: z.array(genealogyEdgeSchema),
});
export type GenealogyAnswer = z.infer<typeof genealogyAnswerSchema>;
