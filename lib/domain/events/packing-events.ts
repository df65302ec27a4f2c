import { codeSchema, statementSchema, textSchema } from '@/lib/domain/codes';
import { declareEvent } from '@/lib/domain/events/declare-event';

const container = codeSchema.meta({ description: 'Carton, pallet or other container.' });

export const unitPacked = declareEvent({
  type: 'unit.packed',
  title: 'Unit packed',
  summary: 'A unit went into a container.',
  body: { unit: codeSchema, container },
});

export const unitUnpacked = declareEvent({
  type: 'unit.unpacked',
  title: 'Unit unpacked',
  summary: 'A unit came out of a container.',
  body: { unit: codeSchema, container },
});

export const containerNested = declareEvent({
  type: 'container.nested',
  title: 'Container nested',
  summary: 'A container went into another one.',
  body: { container, into: container },
});

export const containerUnnested = declareEvent({
  type: 'container.unnested',
  title: 'Container taken out',
  summary: 'A container came out of another one.',
  body: { container, from: container },
});

export const containerShipped = declareEvent({
  type: 'container.shipped',
  title: 'Container shipped',
  summary: 'A container left for a customer, with everything in it.',
  body: {
    container,
    shipment: codeSchema,
    customer: statementSchema,
    destination: textSchema.optional(),
  },
});
