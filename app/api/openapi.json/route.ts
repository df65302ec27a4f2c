import { defineRoute } from '@/lib/server/http/define-route';
import { openApiDocument } from '@/lib/server/openapi';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'contract', handle: async () => Response.json(openApiDocument()) },
});
