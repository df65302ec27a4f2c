import { genealogyQuestionSchema } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { readGenealogy } from '@/lib/server/read-genealogy';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, genealogyQuestionSchema);
      const answer = await readGenealogy(question);
      if (answer === null)
        throw new ProblemError('not_found', {
          detail: `No event names a unit ${question.unit}${question.at === undefined ? '' : ' by then'}.`,
        });
      return Response.json(answer);
    },
  },
});
