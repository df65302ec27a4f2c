import { defineRoute } from '@/lib/server/http/define-route';
import { listStations } from '@/lib/server/list-stations';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'check', handle: async () => Response.json(await listStations()) },
});
