import { defineRoute } from '@/lib/server/http/define-route';
import { listOpenHolds } from '@/lib/server/list-open-holds';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'screen:holds', handle: async () => Response.json(await listOpenHolds()) },
});
