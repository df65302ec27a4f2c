import { differenceQuestionSchema } from '@/lib/domain/genealogy/question';
import { differenceFile } from '@/lib/server/http/answer-difference';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';

/** Every change of an answer as a file for a link in a page, which cannot send `Accept: text/csv`. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    handle: (request) => differenceFile(readQuery(request, differenceQuestionSchema)),
  },
});
