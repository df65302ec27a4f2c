import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { whereUsed } from '@/lib/server/where-used';
import { whereUsedCsv } from '@/lib/server/where-used-csv';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, whereUsedQuestionSchema);
      if (!wantsCsv(request.headers.get('accept'))) return Response.json(await whereUsed(question));
      return new Response(await whereUsedCsv(question), {
        headers: {
          'content-type': 'text/csv; charset=utf-8; header=present',
          'content-disposition': 'attachment; filename="where-used.csv"',
        },
      });
    },
  },
});

function wantsCsv(accept: string | null): boolean {
  return (accept ?? '').split(',').some((type) => type.split(';')[0]?.trim().toLowerCase() === 'text/csv');
}
