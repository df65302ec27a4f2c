import { replicaCursorSchema, replicaQuestionSchema } from '@/lib/domain/replica/replica-answer';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { streamOf } from '@/lib/server/http/stream-of';
import { readReplica } from '@/lib/server/read-replica';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'screen:station',
    async handle(request, { principal }) {
      const { station, ...given } = readQuery(request, replicaQuestionSchema);
      const after = replicaCursorSchema.safeParse(given).data ?? null;
      const replica = await readReplica({ station, after }, principal);
      if (replica === null)
        throw new ProblemError('not_found', { detail: `The plant has no station ${station}.` });
      return new Response(streamOf(replica), { headers: { 'content-type': 'application/json' } });
    },
  },
});
