import { z } from 'zod';
import { codeSchema, textSchema } from '@/lib/domain/codes';
import { itemKindSchema } from '@/lib/domain/events/vocabulary';
import { compileSerialPattern, SERIAL_PATTERN_LENGTH_MAX } from '@/lib/domain/plant/serial-pattern';

const ENTRIES_MAX = 100_000;

function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

const siteSchema = z.strictObject({
  code: codeSchema,
  name: textSchema.optional(),
  timeZone: z
    .string()
    .max(64)
    .refine(isTimeZone, {
      error: 'Not an IANA time zone such as Europe/London.',
      params: { code: 'unknown_time_zone' },
    })
    .optional(),
});

const partSchema = z.strictObject({
  number: codeSchema,
  description: textSchema.optional(),
  floorLife: z
    .enum(['1', '2', '2a', '3', '4', '5', '5a', '6'])
    .meta({ description: 'Moisture sensitivity level (J-STD-020).' })
    .optional(),
  attrition: z
    .number()
    .min(0)
    .max(1)
    .meta({
      description:
        'Share of the use that may be lost at pick-up; with it, counts are weighed against the use.',
    })
    .optional(),
});

const slotSchema = z.strictObject({ name: codeSchema, holds: itemKindSchema });

const stationSchema = z.strictObject({
  code: codeSchema,
  line: codeSchema.optional(),
  operation: codeSchema,
  slots: z.array(slotSchema).max(10_000).optional(),
  scannedBy: z
    .array(codeSchema)
    .max(1000)
    .meta({
      description:
        'Devices that scan changes of material here: while one owes events, a change may be missing.',
    })
    .optional(),
  withoutServer: z
    .enum(['flag', 'stop'])
    .meta({
      description:
        'What happens to a unit that cannot be judged fully because the server is away: it goes on and is flagged (default), or it stops.',
    })
    .optional(),
});

const routeStepSchema = z.strictObject({
  step: z.int().min(0).max(1_000_000),
  operation: codeSchema,
  attempts: z
    .int()
    .min(1)
    .max(1000)
    .meta({ description: 'Results at this step before the unit is held; default 3.' })
    .optional(),
  sample: z
    .number()
    .min(0)
    .max(1)
    .meta({ description: 'Share of units that owe this step; without it every unit does.' })
    .optional(),
});

const bomLineSchema = z
  .strictObject({
    part: codeSchema.optional(),
    product: codeSchema.optional(),
    positions: z.array(codeSchema).max(10_000).optional(),
    station: codeSchema.optional(),
    slot: codeSchema.optional(),
  })
  .check((context) => {
    const line = context.value;
    const fault = (path: string, message: string) =>
      context.issues.push({
        code: 'custom',
        input: line,
        path: [path],
        message,
        params: { code: 'incomplete' },
      });
    if ((line.part === undefined) === (line.product === undefined))
      fault('part', 'A BOM line names either a part or a product.');
    if ((line.station === undefined) !== (line.slot === undefined))
      fault(line.slot === undefined ? 'slot' : 'station', 'station and slot go together.');
    if (line.product !== undefined && line.slot !== undefined)
      fault('slot', 'A sub-assembly is joined, not drawn from a slot.');
  });

const productSchema = z.strictObject({
  number: codeSchema,
  revision: codeSchema,
  serialPattern: z
    .string()
    .min(1)
    .max(SERIAL_PATTERN_LENGTH_MAX)
    .refine((pattern) => !pattern.includes('\u0000') && pattern.isWellFormed(), {
      error: 'A pattern cannot hold NUL or half a character.',
      params: { code: 'unprintable' },
    })
    .refine((pattern) => compileSerialPattern(pattern) !== null, {
      error:
        'Not a regular expression that can be run safely (RE2 syntax: no look-around, no back-references).',
      params: { code: 'not_a_pattern' },
    })
    .optional(),
  route: z.array(routeStepSchema).max(1000).optional(),
  bom: z.array(bomLineSchema).max(10_000).optional(),
});

const operatorSchema = z.strictObject({
  badge: codeSchema,
  name: textSchema.optional(),
  operations: z.array(codeSchema).max(1000).optional(),
});

function checkUnique<T>(
  context: z.core.ParsePayload<unknown>,
  rows: {
    entries: readonly T[] | undefined;
    path: (string | number)[];
    keyOf: (entry: T) => string;
    name: string;
  },
): void {
  const seen = new Set<string>();
  (rows.entries ?? []).forEach((entry, index) => {
    const key = rows.keyOf(entry);
    if (seen.has(key))
      context.issues.push({
        code: 'custom',
        input: key,
        path: [...rows.path, index, rows.name],
        message: 'Given twice in this document.',
        params: { code: 'duplicate' },
      });
    seen.add(key);
  });
}

/**
 * The plant file: what the plant is made of. A PUT is an upsert by key (site, part number, station code, slot name,
 * product number and revision, badge); what it omits stays. A route or a BOM that is given replaces the old one.
 */
export const plantFileSchema = z
  .strictObject({
    site: siteSchema.optional(),
    parts: z.array(partSchema).max(ENTRIES_MAX).optional(),
    stations: z.array(stationSchema).max(ENTRIES_MAX).optional(),
    products: z.array(productSchema).max(ENTRIES_MAX).optional(),
    operators: z.array(operatorSchema).max(ENTRIES_MAX).optional(),
  })
  .check((context) => {
    const { parts, stations, products, operators } = context.value;
    checkUnique(context, { entries: parts, path: ['parts'], keyOf: (part) => part.number, name: 'number' });
    checkUnique(context, { entries: stations, path: ['stations'], keyOf: (row) => row.code, name: 'code' });
    checkUnique(context, {
      entries: operators,
      path: ['operators'],
      keyOf: (row) => row.badge,
      name: 'badge',
    });
    checkUnique(context, {
      entries: products,
      path: ['products'],
      keyOf: (product) => JSON.stringify([product.number, product.revision]),
      name: 'revision',
    });
    stations?.forEach((station, index) => {
      const path = ['stations', index, 'slots'];
      checkUnique(context, { entries: station.slots, path, keyOf: (slot) => slot.name, name: 'name' });
    });
    products?.forEach((product, index) => {
      const path = ['products', index, 'route'];
      checkUnique(context, {
        entries: product.route,
        path,
        keyOf: (step) => String(step.step),
        name: 'step',
      });
    });
  })
  .meta({
    title: 'Plant file',
    description: 'Site, parts, stations, products with route and BOM, operators.',
  });

export type PlantFile = z.infer<typeof plantFileSchema>;
export type PartEntry = z.infer<typeof partSchema>;
export type StationEntry = z.infer<typeof stationSchema>;
export type RouteStep = z.infer<typeof routeStepSchema>;
export type BomLine = z.infer<typeof bomLineSchema>;
export type ProductEntry = z.infer<typeof productSchema>;
export type OperatorEntry = z.infer<typeof operatorSchema>;
