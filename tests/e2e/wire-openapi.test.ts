import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020';
import addFormats from 'ajv-formats';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ACCEPTED_EVENTS, REFUSED_EVENTS } from '@/tests/support/event-samples';
import { problemOf, seedLine, wireClient } from '@/tests/support/wire-client';

const client = await wireClient();

const documentSchema = z.looseObject({
  openapi: z.string(),
  components: z.looseObject({ schemas: z.record(z.string(), z.record(z.string(), z.unknown())) }),
  paths: z.record(z.string(), z.record(z.string(), z.looseObject({}))),
});
let document: z.infer<typeof documentSchema>;
let ajv: Ajv2020;

beforeAll(async () => {
  document = documentSchema.parse(await client.getJson('/api/openapi.json'));
  ajv = addFormats.default(
    new Ajv2020({ strict: true, strictRequired: false, strictTypes: false, allErrors: true }),
  );
  ajv.addVocabulary(['components', 'schemas', 'securitySchemes']);
  ajv.addSchema({ $id: 'openapi', components: document.components });
});

/** A validator of a named schema of the document. */
function validatorOf(name: string): ValidateFunction {
  return ajv.compile({ $ref: `openapi#/components/schemas/${name}` });
}

/** Every place in the document where a schema stands beside `content` or in a parameter. */
function inlineSchemas(value: unknown, path = ''): [string, object][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]: [string, unknown]) =>
    key === 'schema' && typeof each === 'object' && each !== null
      ? [[`${path}/${key}`, each] satisfies [string, object]]
      : inlineSchemas(each, `${path}/${key}`),
  );
}

describe('the document', () => {
  it('is valid OpenAPI 3.1', async () => {
    expect(document.openapi).toMatch(/^3\.1\./);
    expect(await new Validator().validate(structuredClone(document))).toEqual({ valid: true });
  });

  it('names the routes of the contract with their methods, and no method that they do not take', async () => {
    const routes = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(routes).toEqual(
      expect.arrayContaining([
        'GET /api/plant',
        'PUT /api/plant',
        'POST /api/events',
        'POST /api/check',
        'GET /api/trace/where-used',
        'GET /api/trace/as-built',
        'GET /api/health',
        'GET /api/openapi.json',
      ]),
    );
    for (const [path, methods] of Object.entries(document.paths)) {
      const response = await client.ask(path, { method: 'PATCH' });
      const allow = response.headers.get('allow')?.split(', ') ?? [];
      for (const method of Object.keys(methods)) expect(allow, path).toContain(method.toUpperCase());
    }
  });

  it('has schemas that compile, each of them', () => {
    for (const name of Object.keys(document.components.schemas))
      expect(validatorOf(name)).toBeTypeOf('function');
    const inline = inlineSchemas(document.paths);
    expect(inline.length).toBeGreaterThan(20);
    for (const [path, schema] of inline) {
      const pointed = JSON.parse(JSON.stringify(schema).replaceAll('"#/', '"openapi#/'));
      expect(() => ajv.compile(pointed), path).not.toThrow();
    }
  });
});

describe('the schema of an event', () => {
  it('accepts what the server accepts', async () => {
    const validate = validatorOf('Event');
    const results = await client.send(...ACCEPTED_EVENTS);
    ACCEPTED_EVENTS.forEach((event, index) => {
      const codes = results[index]?.refusal?.code ?? 'none';
      expect({ event, valid: validate(event), malformed: codes === 'malformed' }).toEqual({
        event,
        valid: true,
        malformed: false,
      });
    });
  });

  it('refuses what the server refuses as malformed', async () => {
    const validate = validatorOf('Event');
    const samples = [...REFUSED_EVENTS.byShapeAlone, ...REFUSED_EVENTS.byMeaning].map((each) => ({
      ...each,
      // As it goes over the wire: without the keys that are not there.
      event: JSON.parse(JSON.stringify(each.event)),
    }));
    expect(samples.length).toBeGreaterThan(40);
    const results = await client.send(...samples.map(({ event }) => event));
    samples.forEach(({ title, event }, index) => {
      // The one fault that JSON Schema has no words for: two times of one event, compared.
      const isBeyondWords = title === 'work that begins after its end';
      expect({ title, valid: validate(event), refused: results[index]?.refusal?.code }).toEqual({
        title,
        valid: isBeyondWords,
        refused: 'malformed',
      });
    });
  });
});

describe('the schemas of answers', () => {
  it('describe what the server really answers', async () => {
    const line = await seedLine(client, 'WO', 3);
    const valid = (name: string, value: unknown) => {
      const validate = validatorOf(name);
      expect({ name, ok: validate(value), errors: validate.errors }).toMatchObject({ ok: true });
    };
    valid('PlantFile', await client.getJson('/api/plant'));
    const [signed, unknown] = [line.say.signed(line.units[0] ?? ''), line.say.signed('nobody')];
    for (const result of await client.send(signed, signed, unknown, {})) valid('EventResult', result);
    valid('Problem', await problemOf(await client.post('/api/check', {}), 400));
    const answers = {
      '/api/trace/where-used': `?item=${line.reel}`,
      '/api/trace/as-built': `?unit=${line.units[0]}`,
      '/api/health': '',
    };
    for (const [path, query] of Object.entries(answers)) {
      const schema = inlineSchemas(document.paths[path]?.get).find(([at]) =>
        at.includes('/200/content/application/json'),
      );
      const validate = ajv.compile(schema?.[1] ?? false);
      expect({
        path,
        ok: validate(await client.getJson(path + query)),
        errors: validate.errors,
      }).toMatchObject({
        ok: true,
      });
    }
  });
});
