import { defineRoute } from '@/lib/server/http/define-route';
import { liveStream } from '@/lib/server/live-stream';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'check',
    async handle() {
      return new Response(liveStream(), {
        headers: {
          'content-type': 'text/event-stream; charset=utf-8',
          // Nothing between here and the tablet may hold it back.
          'cache-control': 'no-store, no-transform',
          'x-accel-buffering': 'no',
        },
      });
    },
  },
});
