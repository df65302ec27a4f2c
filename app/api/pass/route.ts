import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { sealPass } from '@/lib/server/people/delivery-pass';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'events',
    async handle(_request, { principal }) {
      if (principal.kind === 'token')
        throw new ProblemError('conflict', { detail: 'The API token sends for anyone: it needs no pass.' });
      return Response.json({ badge: principal.badge, pass: await sealPass(principal.badge) });
    },
  },
});
