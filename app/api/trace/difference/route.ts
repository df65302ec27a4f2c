import { differenceQuestionSchema } from '@/lib/domain/genealogy/question';
import { differenceFile, differenceOf } from '@/lib/server/http/answer-difference';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { wantsCsv } from '@/lib/server/http/wants-csv';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, differenceQuestionSchema);
      return wantsCsv(request) ? differenceFile(question) : Response.json(await differenceOf(question));
    },
  },
});
