import { statementSchema } from '@/lib/domain/codes';
import { declareEvent } from '@/lib/domain/events/declare-event';
import { eventIdSchema } from '@/lib/domain/events/vocabulary';

export const exceptionCleared = declareEvent({
  type: 'exception.cleared',
  title: 'Exception cleared',
  summary:
    'QA has looked at an event that broke a rule and was recorded all the same; the hold that it caused ends.',
  body: {
    event: eventIdSchema.meta({ description: 'The event that broke a rule.' }),
    reason: statementSchema,
  },
});
