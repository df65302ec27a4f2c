import { changeoverQuestionSchema } from '@/lib/domain/station/changeover-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { readChangeover } from '@/lib/server/read-changeover';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'screen:changeover',
    async handle(request) {
      const { station } = readQuery(request, changeoverQuestionSchema);
      const picture = await readChangeover(station);
      if (picture === null)
        throw new ProblemError('not_found', { detail: `The plant has no station ${station}.` });
      return Response.json(picture);
    },
  },
});
