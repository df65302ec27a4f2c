import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { csvName } from '@/lib/server/http/csv-name';
import { csvResponse } from '@/lib/server/http/csv-response';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { wantsCsv } from '@/lib/server/http/wants-csv';
import { whereUsed } from '@/lib/server/where-used';
import { whereUsedCsv } from '@/lib/server/where-used-csv';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, whereUsedQuestionSchema);
      if (!wantsCsv(request)) return Response.json(await whereUsed(question));
      return csvResponse(await whereUsedCsv(question), csvName(question, new Date()));
    },
  },
});
