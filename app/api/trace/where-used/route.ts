import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { csvName } from '@/lib/server/http/csv-name';
import { csvResponse } from '@/lib/server/http/csv-response';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { withinUnits } from '@/lib/server/http/too-many-units';
import { wantsCsv } from '@/lib/server/http/wants-csv';
import { whereUsed } from '@/lib/server/where-used';
import { whereUsedCsv } from '@/lib/server/where-used-csv';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, whereUsedQuestionSchema);
      if (!wantsCsv(request)) return Response.json(await withinUnits(whereUsed(question)));
      return csvResponse(await withinUnits(whereUsedCsv(question)), csvName(question, new Date()));
    },
  },
});
