import { codeSchema, statementSchema } from '@/lib/domain/codes';
import { declareEvent } from '@/lib/domain/events/declare-event';

export const deviceRetired = declareEvent({
  type: 'device.retired',
  title: 'Device retired',
  summary: 'A device is lost, and what it has not sent is lost with it.',
  body: {
    device: codeSchema.meta({
      description: 'The lost device; should it speak again, its events are recorded.',
    }),
    reason: statementSchema,
  },
});
