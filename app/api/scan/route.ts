import { scanQuestionSchema } from '@/lib/domain/station/scan-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { readScan } from '@/lib/server/read-scan';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'check',
    async handle(request) {
      const { code, station } = readQuery(request, scanQuestionSchema);
      return Response.json(await readScan(code, station));
    },
  },
});
