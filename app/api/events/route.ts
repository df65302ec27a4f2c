import { appendRequestSchema } from '@/lib/domain/events/append-request';
import { inputErrors } from '@/lib/domain/input-errors';
import { appendEvents } from '@/lib/server/append-events';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'events',
    async handle(request, { principal }) {
      const parsed = appendRequestSchema.safeParse(await readJsonBody(request));
      if (!parsed.success) {
        const detail = 'Send {"events": [ … ]} with 1 to 1000 events.';
        throw new ProblemError('malformed', { detail, errors: inputErrors(parsed.error) });
      }
      const { events, numbers, passes } = parsed.data;
      const delivery = { isNumberOnce: numbers === 'once', passes: passes ?? [] };
      return Response.json({ results: await appendEvents(events, principal, delivery) });
    },
  },
});
