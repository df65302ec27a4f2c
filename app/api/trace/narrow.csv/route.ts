import { narrowAddressSchema } from '@/lib/domain/genealogy/narrow-question';
import { csvResponse } from '@/lib/server/http/csv-response';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { narrowCsv } from '@/lib/server/narrow-csv';

/** The whole narrowed answer as a file for a link in a page, which can neither post nor send `Accept: text/csv`. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'narrow',
    async handle(request) {
      const { conditions } = readQuery(request, narrowAddressSchema);
      return csvResponse(await narrowCsv(conditions), 'narrowed.csv');
    },
  },
});
