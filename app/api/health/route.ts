import { defineRoute } from '@/lib/server/http/define-route';
import { readHealth } from '@/lib/server/read-health';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'public',
    async handle() {
      const health = await readHealth();
      return Response.json(health, { status: health.status === 'ok' ? 200 : 503 });
    },
  },
});
