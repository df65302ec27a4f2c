import { scanQuestionSchema } from '@/lib/domain/station/scan-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { readJudgedScan, readScan } from '@/lib/server/read-scan';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'check',
    async handle(request) {
      const { code, station, operator } = readQuery(request, scanQuestionSchema);
      if (station === undefined || operator === undefined)
        return Response.json(await readScan(code, station));
      return Response.json(await readJudgedScan({ code, station, operator }));
    },
  },
});
