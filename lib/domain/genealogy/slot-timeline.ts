import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { itemKindSchema, resultSchema } from '@/lib/domain/events/vocabulary';
import { completenessSchema } from '@/lib/domain/genealogy/answer';
import { instantParameter } from '@/lib/domain/genealogy/question';
import { instantOf } from '@/lib/domain/time';

const DAY_US = 24 * 3600 * 1_000_000;
/** Longest time that one timeline can show. */
const SPAN_MAX_US = 31 * DAY_US;

/** Query of a slot timeline: a station and a time of at most 31 days. */
export const slotTimelineQuestionSchema = z
  .strictObject({ station: codeSchema, from: instantParameter, to: instantParameter })
  .check(({ value: { from, to }, issues }) => {
    const lengthUs = instantOf(to) - instantOf(from);
    if (lengthUs > 0 && lengthUs <= SPAN_MAX_US) return;
    const message = 'Ask for a time that ends after it begins, of at most 31 days.';
    issues.push({ code: 'custom', input: to, path: ['to'], message, params: { code: 'not_a_span' } });
  });
export type SlotTimelineQuestion = z.infer<typeof slotTimelineQuestionSchema>;

const barSchema = z.object({
  event: z.string().meta({ description: 'Id of the event that put it there.' }),
  item: z.string(),
  kind: itemKindSchema.nullable(),
  part: z.string().nullable(),
  from: z.string(),
  to: z.string().nullable().meta({ description: 'Null while it stands there.' }),
  certain: z
    .object({ from: z.string(), to: z.string().nullable() })
    .nullable()
    .meta({ description: 'When it certainly stood there; null when that is never sure.' }),
  possible: z
    .object({ from: z.string(), to: z.string().nullable() })
    .meta({ description: 'When it cannot be excluded that it stood there.' }),
  splice: z
    .object({ greyUntil: z.string().nullable() })
    .nullable()
    .meta({ description: 'It came by a splice: until then its predecessor may have been drawn from too.' }),
});
/** What stood in a slot, with the core that is certain and the shell that is possible. */
export type SlotBar = z.infer<typeof barSchema>;

const tickSchema = z.object({
  unit: z.string(),
  at: z.string(),
  low: z.string(),
  high: z.string(),
  result: resultSchema,
});
/** A unit that was processed at the station. */
export type PassTick = z.infer<typeof tickSchema>;

/** The answer to "what stood where, when, and which units came by?" */
export const slotTimelineAnswerSchema = completenessSchema.extend({
  station: z.string(),
  operation: z.string().nullable(),
  line: z.string().nullable(),
  from: z.string(),
  to: z.string(),
  slots: z.array(z.object({ slot: z.string(), holds: itemKindSchema.nullable(), bars: z.array(barSchema) })),
  barsLeft: z.number().meta({ description: 'Stays beyond the newest 2,000: ask for a shorter time.' }),
  passes: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('units'), count: z.number(), units: z.array(tickSchema) }),
    z.object({ kind: z.literal('density'), count: z.number(), counts: z.array(z.number()) }).meta({
      description: 'Too many for ticks: how many fell into each of equal steps from `from` to `to`.',
    }),
  ]),
});
export type SlotTimeline = z.infer<typeof slotTimelineAnswerSchema>;
