import { defineRoute } from '@/lib/server/http/define-route';

/** The server's time, for a device with nothing else to ask; how its clock is measured stands in the answer's header. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'clock',
    async handle() {
      return Response.json({ now: new Date().toISOString() });
    },
  },
});
