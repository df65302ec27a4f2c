import { inputErrors } from '@/lib/domain/input-errors';
import { plantTextSchema } from '@/lib/domain/plant/plant-preview';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';
import { previewPlant } from '@/lib/server/preview-plant';

/** What the text of a plant file would change, or its faults by line. Changes nothing. */
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'plant:write',
    async handle(request) {
      const parsed = plantTextSchema.safeParse(await readJsonBody(request));
      if (!parsed.success)
        throw new ProblemError('malformed', {
          detail: 'Send {"text": "…"} with the text of a plant file.',
          errors: inputErrors(parsed.error),
        });
      return Response.json(await previewPlant(parsed.data.text));
    },
  },
});
