import { z } from 'zod';
import { codeSchema, statementSchema, textSchema } from '@/lib/domain/codes';
import { declareEvent, declareStationEvent } from '@/lib/domain/events/declare-event';
import { resultSchema } from '@/lib/domain/events/vocabulary';
import { instantOf, instantSchema } from '@/lib/domain/time';

const unit = codeSchema.meta({ description: 'Serial of the unit.' });
const position = codeSchema.meta({ description: 'Reference designator.' });
const quantity = z.number().min(0).max(1e9).meta({ description: 'Pieces, or the unit of the part.' });

/** Something measured: a value with its unit and limits. */
export const readingSchema = z.strictObject({
  name: codeSchema,
  value: z.union([z.number(), textSchema]),
  unit: codeSchema.optional(),
  low: z.number().optional(),
  high: z.number().optional(),
});

/** Something wrong on a unit: a defect code at a reference designator. */
export const defectSchema = z.strictObject({
  code: codeSchema,
  position: position.optional(),
  note: textSchema.optional(),
});

export const unitStarted = declareEvent({
  type: 'unit.started',
  title: 'Unit started',
  summary: 'A unit got its serial and its product revision.',
  body: {
    unit,
    product: codeSchema,
    revision: codeSchema,
    order: codeSchema.optional(),
    boardLot: codeSchema.meta({ description: 'Lot of the bare board: a draw of that lot.' }).optional(),
    panel: codeSchema.optional(),
    panelPosition: z.union([codeSchema, z.int().min(0)]).optional(),
  },
});

const processed = declareStationEvent({
  type: 'unit.processed',
  title: 'Unit processed',
  summary: 'A station worked on a unit and judged the result.',
  body: {
    unit,
    result: resultSchema,
    startedAt: instantSchema.meta({ description: 'Begin of the work; `at` is its end.' }).optional(),
    used: z
      .array(
        z.strictObject({
          item: codeSchema,
          positions: z.array(position).max(10_000).optional(),
          quantity: quantity.optional(),
        }),
      )
      .max(1000)
      .optional(),
    readings: z.array(readingSchema).max(1000).optional(),
    defects: z.array(defectSchema).max(1000).optional(),
  },
});

export const unitProcessed = {
  ...processed,
  schema: processed.schema.check((context) => {
    const { at, body } = context.value;
    if (body.startedAt === undefined || instantOf(body.startedAt) <= instantOf(at)) return;
    context.issues.push({
      code: 'custom',
      input: body.startedAt,
      path: ['body', 'startedAt'],
      message: 'startedAt is after at: the work would begin after its end.',
      params: { code: 'after_its_end' },
    });
  }),
};

export const unitSigned = declareEvent({
  type: 'unit.signed',
  title: 'Unit signed off',
  summary: 'A person answers for a unit: the sign-off, with its meaning.',
  body: { unit, meaning: statementSchema },
});

export const unitJoined = declareEvent({
  type: 'unit.joined',
  title: 'Unit joined',
  summary: 'A sub-assembly went into another unit.',
  body: { unit, into: unit, position },
});

export const unitSeparated = declareEvent({
  type: 'unit.separated',
  title: 'Unit separated',
  summary: 'A sub-assembly came out of another unit.',
  body: { unit, from: unit },
});

export const unitScrapped = declareEvent({
  type: 'unit.scrapped',
  title: 'Unit scrapped',
  summary: 'A unit is scrap, for good.',
  body: { unit, reason: statementSchema },
});

export const unitReturned = declareEvent({
  type: 'unit.returned',
  title: 'Unit returned',
  summary: 'A unit came back from a customer.',
  body: {
    unit,
    customer: textSchema.optional(),
    reference: textSchema.optional(),
    symptom: textSchema.optional(),
  },
});

export const partRemoved = declareEvent({
  type: 'part.removed',
  title: 'Part removed',
  summary: 'The part at a position was taken off a unit.',
  body: { unit, position, reason: textSchema.optional() },
});

const installed = declareEvent({
  type: 'part.installed',
  title: 'Part installed',
  summary: 'A part from an item, or salvaged from another unit, was put at a position.',
  body: {
    unit,
    position,
    item: codeSchema.optional(),
    fromUnit: unit.optional(),
    fromPosition: position.optional(),
  },
});

// The check below, as a JSON Schema says it.
const FROM_ONE_PLACE = {
  allOf: [
    {
      properties: {
        body: {
          oneOf: [
            {
              required: ['item'],
              not: { anyOf: [{ required: ['fromUnit'] }, { required: ['fromPosition'] }] },
            },
            { required: ['fromUnit', 'fromPosition'], not: { required: ['item'] } },
          ],
        },
      },
    },
  ],
};

export const partInstalled = {
  ...installed,
  schema: installed.schema
    .check((context) => {
      const { item, fromUnit, fromPosition } = context.value.body;
      const isFromItem = item !== undefined && fromUnit === undefined && fromPosition === undefined;
      const isSalvage = item === undefined && fromUnit !== undefined && fromPosition !== undefined;
      if (isFromItem || isSalvage) return;
      context.issues.push({
        code: 'custom',
        input: item,
        path: ['body', item === undefined && fromUnit !== undefined ? 'fromPosition' : 'item'],
        message: 'Give either item, or fromUnit with fromPosition.',
        params: { code: 'incomplete' },
      });
    })
    .meta(FROM_ONE_PLACE),
};
