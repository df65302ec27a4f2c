import { principalLabel } from '@/lib/domain/people/principal';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';
import { putPlant } from '@/lib/server/put-plant';
import { readPlant } from '@/lib/server/read-plant';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'plant:read',
    handle: async () => Response.json((await readPlant()).file),
  },
  PUT: {
    action: 'plant:write',
    async handle(request, { principal }) {
      const result = await putPlant(await readJsonBody(request), principalLabel(principal));
      if (!result.ok)
        throw new ProblemError('malformed', { detail: 'The plant file has faults.', errors: result.errors });
      return Response.json({
        ...result.plant,
        ...(result.warnings.length > 0 && { warnings: result.warnings }),
      });
    },
  },
});
