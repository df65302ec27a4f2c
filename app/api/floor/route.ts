import { defineRoute } from '@/lib/server/http/define-route';
import { readFloor } from '@/lib/server/read-floor';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'screen:floor', handle: async () => Response.json(await readFloor()) },
});
