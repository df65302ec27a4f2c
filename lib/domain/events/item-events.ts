import { z } from 'zod';
import { codeSchema, statementSchema, textSchema } from '@/lib/domain/codes';
import { declareEvent, declareStationEvent } from '@/lib/domain/events/declare-event';
import { readingSchema } from '@/lib/domain/events/unit-events';
import { itemKindSchema, resultSchema } from '@/lib/domain/events/vocabulary';

const item = codeSchema.meta({ description: 'Code of the reel, lot, paste, stencil or other item.' });
const slot = codeSchema.meta({ description: 'Name of the slot at the station.' });
const quantity = z.number().min(0).max(1e9).meta({ description: 'Pieces, or the unit of the part.' });
const left = quantity.meta({ description: 'Pieces that are left of it.' }).optional();

export const itemReceived = declareEvent({
  type: 'item.received',
  title: 'Item received',
  summary: 'An item was identified and booked in.',
  body: {
    item,
    kind: itemKindSchema,
    part: codeSchema.optional(),
    lot: codeSchema.optional(),
    supplier: textSchema.optional(),
    quantity: quantity.optional(),
  },
});

export const itemCounted = declareEvent({
  type: 'item.counted',
  title: 'Item counted',
  summary: 'What is left of an item was counted.',
  body: { item, quantity, method: codeSchema.meta({ description: 'How: x-ray, by hand, weighed.' }) },
});

export const itemMounted = declareStationEvent({
  type: 'item.mounted',
  title: 'Item mounted',
  summary: 'An item went into a slot of a station.',
  body: { item, slot },
});

export const itemUnmounted = declareStationEvent({
  type: 'item.unmounted',
  title: 'Item unmounted',
  summary: 'An item came out of a slot of a station.',
  body: { item, slot, left },
});

export const itemSpliced = declareStationEvent({
  type: 'item.spliced',
  title: 'Item spliced',
  summary: 'The end of a reel in a slot was joined to the begin of another one, without a stop.',
  body: {
    from: codeSchema.meta({ description: 'Code of the reel that ends.' }),
    to: codeSchema.meta({ description: 'Code of the reel that goes on.' }),
    slot,
    greyUnits: z.int().min(0).max(1000).optional().meta({
      description:
        'Units after the splice that may have drawn from either reel; absent: not known, until the slot changes again.',
    }),
  },
});

export const itemInspected = declareEvent({
  type: 'item.inspected',
  title: 'Item inspected',
  summary: 'An item was inspected and judged.',
  body: { item, result: resultSchema, readings: z.array(readingSchema).max(1000).optional() },
});

export const itemRetired = declareEvent({
  type: 'item.retired',
  title: 'Item retired',
  summary: 'An item is not to be used any more.',
  body: { item, reason: statementSchema, left },
});
