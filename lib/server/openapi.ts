import { z } from 'zod';
import { CLOCK_HEADER, clockAnswerSchema } from '@/lib/domain/clock/clock-exchange';
import { EVENTS_PER_REQUEST_MAX } from '@/lib/domain/events/append-request';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { checkAnswerSchema, checkQuestionSchema, refusalSchema } from '@/lib/domain/gate/question';
import { whereUsedAnswerSchema } from '@/lib/domain/genealogy/answer';
import { asBuiltAnswerSchema } from '@/lib/domain/genealogy/as-built-answer';
import { differenceSchema } from '@/lib/domain/genealogy/difference';
import { genealogyAnswerSchema, genealogyQuestionSchema } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { narrowAnswerSchema } from '@/lib/domain/genealogy/narrow-answer';
import { narrowQuestionSchema } from '@/lib/domain/genealogy/narrow-question';
import {
  asBuiltQuestionSchema,
  differenceQuestionSchema,
  whereUsedQuestionSchema,
} from '@/lib/domain/genealogy/question';
import { slotTimelineAnswerSchema, slotTimelineQuestionSchema } from '@/lib/domain/genealogy/slot-timeline';
import { plantFileSchema } from '@/lib/domain/plant/plant-file';
import { healthSchema } from '@/lib/server/read-health';
import packageFile from '@/package.json' with { type: 'json' };

type Json = Record<string, unknown>;

/** JSON Schema of what a route takes or answers, as the route itself runs it. */
function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Json {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, {
    io,
    target: 'draft-2020-12',
    unrepresentable: 'any',
  });
  return rest;
}

const json = (schema: Json) => ({ 'application/json': { schema } });
const body = (schema: Json) => ({ required: true, content: json(schema) });
const ref = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });

const PROBLEM_STATUS = {
  400: 'Malformed: `errors` points at each fault.',
  401: 'Neither a session nor the API token.',
  403: 'The role may not do this.',
  405: 'This address does not take this method.',
  413: 'The body is over 4 MiB.',
};

function responses(description: string, content: Json): Json {
  const problems = Object.entries(PROBLEM_STATUS).map(([status, text]) => [
    status,
    { description: text, content: { 'application/problem+json': { schema: ref('Problem') } } },
  ]);
  return { 200: { description, content }, ...Object.fromEntries(problems) };
}

/** Query parameters, one for each key of a schema. */
function parameters(schema: z.ZodType): Json[] {
  const { properties = {}, required = [] } = z
    .object({
      properties: z.record(z.string(), z.unknown()).optional(),
      required: z.array(z.string()).optional(),
    })
    .parse(schemaOf(schema, 'input'));
  return Object.entries(properties).map(([name, property]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema: property,
    // Lists are written with commas.
    style: 'form',
    explode: false,
  }));
}

const resultSchema = z.object({
  id: z.string().nullable(),
  outcome: z.enum(['recorded', 'already_recorded', 'refused']),
  refusal: refusalSchema.optional(),
  flags: z.array(refusalSchema).optional(),
});

const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  errors: z.array(z.object({ pointer: z.string(), code: z.string(), detail: z.string() })).optional(),
});

/** The wire contract as an OpenAPI 3.1 document, made from the schemas that the routes run. */
export function openApiDocument(): Json {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Reelkin wire contract',
      version: packageFile.version,
      description:
        'Unit traceability and genealogy: stations append events, questions are answered from them.',
    },
    components: {
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer' },
        session: { type: 'apiKey', in: 'cookie', name: 'reelkin_session' },
      },
      schemas: {
        Event: schemaOf(eventSchema, 'input'),
        EventResult: schemaOf(resultSchema, 'output'),
        PlantFile: schemaOf(plantFileSchema, 'input'),
        Problem: schemaOf(problemSchema, 'output'),
      },
    },
    security: [{ token: [] }, { session: [] }],
    paths: paths(),
  };
}

function paths(): Json {
  const events = { type: 'array', minItems: 1, maxItems: EVENTS_PER_REQUEST_MAX, items: ref('Event') };
  const results = { type: 'array', items: ref('EventResult') };
  return {
    '/api/plant': {
      get: { summary: 'The plant file, whole', responses: responses('The plant.', json(ref('PlantFile'))) },
      put: {
        summary: 'Put a plant file on top of the plant: an upsert, all or nothing',
        requestBody: body(ref('PlantFile')),
        responses: responses(
          'The whole plant, with `warnings` where it names what it does not describe.',
          json(ref('PlantFile')),
        ),
      },
    },
    '/api/events': {
      post: {
        summary: 'Append events',
        requestBody: body({
          type: 'object',
          required: ['events'],
          additionalProperties: false,
          properties: { events },
        }),
        responses: responses(
          'One result an event, in order; durable.',
          json({ type: 'object', properties: { results } }),
        ),
      },
    },
    '/api/check': {
      post: {
        summary: 'Ask the gate; changes nothing',
        requestBody: body(schemaOf(checkQuestionSchema, 'input')),
        responses: responses('Go or no-go with reasons.', json(schemaOf(checkAnswerSchema, 'output'))),
      },
    },
    '/api/trace/where-used': {
      get: {
        summary: 'Which units used this, and where are they now?',
        parameters: parameters(whereUsedQuestionSchema),
        responses: responses('A page of units with counts over all; as text/csv everything.', {
          ...json(schemaOf(whereUsedAnswerSchema, 'output')),
          'text/csv': { schema: { type: 'string' } },
        }),
      },
    },
    '/api/trace/narrow': {
      post: {
        summary: 'Which units meet every condition, and what does each condition do?',
        requestBody: body(schemaOf(narrowQuestionSchema, 'input')),
        responses: responses(
          'A page of the units that no condition rules out, with what each condition does; as text/csv every unit.',
          { ...json(schemaOf(narrowAnswerSchema, 'output')), 'text/csv': { schema: { type: 'string' } } },
        ),
      },
    },
    '/api/trace/difference': {
      get: {
        summary: 'Which units joined or left a where-used answer since it was given, and which event did it?',
        parameters: parameters(differenceQuestionSchema),
        responses: responses('The changes with their events, up to `limit`; as text/csv every change.', {
          ...json(schemaOf(differenceSchema, 'output')),
          'text/csv': { schema: { type: 'string' } },
        }),
      },
    },
    '/api/trace/as-built': {
      get: {
        summary: 'Everything that went into a unit and happened to it',
        parameters: parameters(asBuiltQuestionSchema),
        responses: responses('The as-built record.', json(schemaOf(asBuiltAnswerSchema, 'output'))),
      },
    },
    '/api/clock': {
      get: {
        summary: 'The time of the server',
        description: `Every answer carries ${CLOCK_HEADER}: mark, receive and transmit time (milliseconds since 1970) to a request with a mark of 1 to 40 letters, digits, _ and - in that header, for offset and delay as in RFC 5905.`,
        responses: responses('The time.', json(schemaOf(clockAnswerSchema, 'output'))),
      },
    },
    '/api/trace/genealogy': {
      get: {
        summary: 'What a unit is made of and what it was made into, as nodes and edges',
        parameters: parameters(genealogyQuestionSchema),
        responses: responses(
          'The nearest nodes, with what the limit left out.',
          json(schemaOf(genealogyAnswerSchema, 'output')),
        ),
      },
    },
    '/api/trace/slot-timeline': {
      get: {
        summary: 'What stood in the slots of a station during a time, and which units came by',
        parameters: parameters(slotTimelineQuestionSchema),
        responses: responses(
          'Stays by slot, and units or their density.',
          json(schemaOf(slotTimelineAnswerSchema, 'output')),
        ),
      },
    },
    '/api/health': {
      get: {
        summary: 'Whether server and database answer',
        security: [],
        responses: { 200: { description: 'They do.', content: json(schemaOf(healthSchema, 'output')) } },
      },
    },
    '/api/openapi.json': {
      get: { summary: 'This document', responses: responses('OpenAPI 3.1.', json({ type: 'object' })) },
    },
  };
}
