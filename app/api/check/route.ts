import { checkQuestionSchema } from '@/lib/domain/gate/question';
import { inputErrors } from '@/lib/domain/input-errors';
import { checkUnit } from '@/lib/server/check-unit';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'check',
    async handle(request) {
      const parsed = checkQuestionSchema.safeParse(await readJsonBody(request));
      if (!parsed.success) {
        const errors = inputErrors(parsed.error);
        throw new ProblemError('malformed', { detail: 'Send a unit and a station.', errors });
      }
      return Response.json(await checkUnit(parsed.data));
    },
  },
});
