import { defineRoute } from '@/lib/server/http/define-route';
import { readExceptions } from '@/lib/server/read-exceptions';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'screen:exceptions', handle: async () => Response.json(await readExceptions()) },
});
