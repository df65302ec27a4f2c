import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { whereUsedCsv } from '@/lib/server/where-used-csv';

/** The whole where-used answer as a file for a link in a page, which cannot send `Accept: text/csv`. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, whereUsedQuestionSchema);
      return new Response(await whereUsedCsv(question), {
        headers: {
          'content-type': 'text/csv; charset=utf-8; header=present',
          'content-disposition': 'attachment; filename="where-used.csv"',
        },
      });
    },
  },
});
