import { inputErrors } from '@/lib/domain/input-errors';
import { labelOrderSchema } from '@/lib/domain/labels/label-order';
import { may } from '@/lib/domain/people/permissions';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readJsonBody } from '@/lib/server/http/read-body';
import { printLabels } from '@/lib/server/labels/print-labels';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  POST: {
    action: 'event:label.printed',
    async handle(request, { principal }) {
      const parsed = labelOrderSchema.safeParse(await readJsonBody(request));
      if (!parsed.success)
        throw new ProblemError('malformed', {
          detail: 'Say which labels to print, and on what.',
          errors: inputErrors(parsed.error),
        });
      const order = parsed.data;
      if (order.kind === 'badge' && !may(principal, 'people:manage'))
        throw new ProblemError('not_permitted', { detail: 'Badges are printed by administrators.' });
      const result = await printLabels(order, principal);
      if (!result.ok) return Response.json(result, { status: 409 });
      if (result.pdf === null) return Response.json({ ok: true });
      return new Response(new Uint8Array(result.pdf), {
        headers: {
          'content-type': 'application/pdf',
          'content-disposition': 'inline; filename="labels.pdf"',
        },
      });
    },
  },
});
