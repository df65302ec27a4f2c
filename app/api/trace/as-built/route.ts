import { asBuiltQuestionSchema } from '@/lib/domain/genealogy/question';
import { asBuilt } from '@/lib/server/as-built';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const { unit, at, knownAt } = readQuery(request, asBuiltQuestionSchema);
      const record = await asBuilt(unit, at, knownAt);
      if (record === null)
        throw new ProblemError('not_found', {
          detail: `No event names a unit ${unit}${at === undefined && knownAt === undefined ? '' : ' by then'}.`,
        });
      return Response.json(record);
    },
  },
});
