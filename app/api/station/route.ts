import { stationQuestionSchema } from '@/lib/domain/station/station-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { readStation } from '@/lib/server/read-station';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'screen:station',
    async handle(request, { principal }) {
      const { code } = readQuery(request, stationQuestionSchema);
      const picture = await readStation(code, principal);
      if (picture === null)
        throw new ProblemError('not_found', { detail: `The plant has no station ${code}.` });
      return Response.json(picture);
    },
  },
});
