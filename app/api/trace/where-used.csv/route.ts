import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { csvName } from '@/lib/server/http/csv-name';
import { csvResponse } from '@/lib/server/http/csv-response';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { withinUnits } from '@/lib/server/http/too-many-units';
import { whereUsedCsv } from '@/lib/server/where-used-csv';

/** The whole where-used answer as a file for a link in a page, which cannot send `Accept: text/csv`. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, whereUsedQuestionSchema);
      return csvResponse(await withinUnits(whereUsedCsv(question)), csvName(question, new Date()));
    },
  },
});
