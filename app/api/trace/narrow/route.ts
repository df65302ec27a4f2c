import { narrowQuestionSchema } from '@/lib/domain/genealogy/narrow-question';
import { inputErrors } from '@/lib/domain/input-errors';
import { csvResponse } from '@/lib/server/http/csv-response';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';
import { wantsCsv } from '@/lib/server/http/wants-csv';
import { narrow } from '@/lib/server/narrow';
import { narrowCsv } from '@/lib/server/narrow-csv';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'narrow',
    async handle(request) {
      const parsed = narrowQuestionSchema.safeParse(await readJsonBody(request));
      if (!parsed.success) {
        const errors = inputErrors(parsed.error);
        throw new ProblemError('malformed', {
          detail: 'Send conditions, at least one of them a must.',
          errors,
        });
      }
      if (!wantsCsv(request)) return Response.json(await narrow(parsed.data));
      return csvResponse(await narrowCsv(parsed.data.conditions), 'narrowed.csv');
    },
  },
});
