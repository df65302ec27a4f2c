import { z } from 'zod';
import { codeSchema, statementSchema } from '@/lib/domain/codes';
import { declareEvent } from '@/lib/domain/events/declare-event';
import { eventIdSchema, holdTargetKindSchema } from '@/lib/domain/events/vocabulary';

export const holdPlaced = declareEvent({
  type: 'hold.placed',
  title: 'Hold placed',
  summary: 'A unit, item, lot or container may not go on until the hold is released.',
  body: { target: z.strictObject({ kind: holdTargetKindSchema, id: codeSchema }), reason: statementSchema },
});

export const holdReleased = declareEvent({
  type: 'hold.released',
  title: 'Hold released',
  summary: 'A hold ended, with the disposition and its reason.',
  body: {
    hold: eventIdSchema.meta({ description: 'Id of the event that placed the hold.' }),
    disposition: statementSchema,
    reason: statementSchema,
  },
});

export const eventVoided = declareEvent({
  type: 'event.voided',
  title: 'Event voided',
  summary: 'Another event never happened.',
  body: {
    event: eventIdSchema.meta({ description: 'Any event but a void; it may arrive later.' }),
    reason: statementSchema,
  },
});
