import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { eventIdSchema } from '@/lib/domain/events/vocabulary';
import { instantSchema } from '@/lib/domain/time';

/** Longest doubt about a time, in milliseconds: ten years, more than any wrong clock needs. */
export const UNCERTAINTY_MAX_MS = 10 * 366 * 24 * 3600 * 1000;

/** `enforce` refuses an event that breaks a rule; `record` takes it, flags it and holds the unit. */
export const gateModeSchema = z.enum(['enforce', 'record']);
export type GateMode = z.infer<typeof gateModeSchema>;

const envelope = {
  id: eventIdSchema.meta({ description: 'Made once by the sender; the same id is the same event.' }),
  at: instantSchema.meta({ description: 'When it happened, by the clock of the device.' }),
  operator: codeSchema.meta({ description: 'Badge of the person who did it.' }).optional(),
  device: codeSchema.meta({ description: 'The device that made the event.' }).optional(),
  deviceSeq: z
    .int()
    .min(1)
    .meta({ description: 'Number of the event on its device, from 1, without gaps.' })
    .optional(),
  uncertaintyMs: z
    .int()
    .min(0)
    .max(UNCERTAINTY_MAX_MS)
    .meta({ description: 'Half-width of the doubt about `at`, in milliseconds; default 0.' })
    .optional(),
  gate: gateModeSchema.meta({ description: 'Default enforce.' }).optional(),
};

type Declaration<T extends string, B extends z.ZodRawShape> = {
  /** Name on the wire. */
  type: T;
  /** Short name for lists and forms. */
  title: string;
  /** One sentence: the fact that the event states. */
  summary: string;
  body: B;
};

const TOGETHER = { dependentRequired: { device: ['deviceSeq'], deviceSeq: ['device'] } };

function checkDevice(context: z.core.ParsePayload<{ device?: unknown; deviceSeq?: unknown }>): void {
  const { device, deviceSeq } = context.value;
  if ((device === undefined) === (deviceSeq === undefined)) return;
  context.issues.push({
    code: 'custom',
    input: deviceSeq,
    path: [device === undefined ? 'device' : 'deviceSeq'],
    message: 'device and deviceSeq go together.',
    params: { code: 'incomplete' },
  });
}

/** Declares an event type whose station is optional. */
export function declareEvent<const T extends string, B extends z.ZodRawShape>(
  declaration: Declaration<T, B>,
) {
  const { type, title, summary, body } = declaration;
  const schema = z
    .strictObject({
      ...envelope,
      station: codeSchema.meta({ description: 'The station where it happened.' }).optional(),
      type: z.literal(type),
      body: z.strictObject(body),
    })
    .check(checkDevice)
    .meta({ title, description: summary, ...TOGETHER });
  return { type, title, summary, schema };
}

/** Declares an event type that means nothing without its station. */
export function declareStationEvent<const T extends string, B extends z.ZodRawShape>(
  declaration: Declaration<T, B>,
) {
  const { type, title, summary, body } = declaration;
  const schema = z
    .strictObject({
      ...envelope,
      station: codeSchema.meta({ description: 'The station where it happened.' }),
      type: z.literal(type),
      body: z.strictObject(body),
    })
    .check(checkDevice)
    .meta({ title, description: summary, ...TOGETHER });
  return { type, title, summary, schema };
}
