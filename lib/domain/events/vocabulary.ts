import { z } from 'zod';

/** Kinds of item: any identified thing that goes into or touches units. */
export const ITEM_KINDS = [
  'reel',
  'lot',
  'paste',
  'stencil',
  'squeegee',
  'carrier',
  'profile',
  'firmware',
  'fixture',
] as const;
export const itemKindSchema = z.enum(ITEM_KINDS);
export type ItemKind = z.infer<typeof itemKindSchema>;

/** Outcome of a step or an inspection. */
export const resultSchema = z.enum(['pass', 'fail']);
export type Result = z.infer<typeof resultSchema>;

/** What a hold can stop. */
export const HOLD_TARGET_KINDS = ['unit', 'item', 'lot', 'container'] as const;
export const holdTargetKindSchema = z.enum(HOLD_TARGET_KINDS);
export type HoldTargetKind = z.infer<typeof holdTargetKindSchema>;

/** What a printed label can name. */
export const LABEL_KINDS = ['unit', 'item', 'container', 'badge'] as const;
export const labelKindSchema = z.enum(LABEL_KINDS);
export type LabelKind = z.infer<typeof labelKindSchema>;

/** An event's id: a UUID version 7, made once by the sender; compared in lower case. */
export const eventIdSchema = z.uuidv7().toLowerCase();
