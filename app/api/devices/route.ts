import { defineRoute } from '@/lib/server/http/define-route';
import { readDevices } from '@/lib/server/read-devices';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: { action: 'screen:devices', handle: async () => Response.json(await readDevices()) },
});
