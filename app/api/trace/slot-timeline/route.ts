import { slotTimelineQuestionSchema } from '@/lib/domain/genealogy/slot-timeline';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { readSlotTimeline } from '@/lib/server/read-slot-timeline';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'trace',
    async handle(request) {
      const question = readQuery(request, slotTimelineQuestionSchema);
      const answer = await readSlotTimeline(question);
      if (answer === null)
        throw new ProblemError('not_found', {
          detail: `No event and no plant file names a station ${question.station}.`,
        });
      return Response.json(answer);
    },
  },
});
