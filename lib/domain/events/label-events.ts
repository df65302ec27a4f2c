import { z } from 'zod';
import { codeSchema, statementSchema } from '@/lib/domain/codes';
import { declareEvent } from '@/lib/domain/events/declare-event';
import { labelKindSchema } from '@/lib/domain/events/vocabulary';

export const labelPrinted = declareEvent({
  type: 'label.printed',
  title: 'Label printed',
  summary: 'Labels that carry a code were printed; every one after the first is a reprint.',
  body: {
    target: z.strictObject({ kind: labelKindSchema, id: codeSchema }),
    copies: z.int().min(1).max(1000).meta({ description: 'How many labels with this code were printed.' }),
    reason: statementSchema
      .meta({ description: 'Why it was printed again; a reprint needs one.' })
      .optional(),
  },
});
