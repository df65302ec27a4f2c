import { productQuestionSchema } from '@/lib/domain/station/product-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';
import { readProduct } from '@/lib/server/read-product';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'plant:read',
    async handle(request) {
      const { product, revision } = readQuery(request, productQuestionSchema);
      const picture = await readProduct(product, revision);
      if (picture === null)
        throw new ProblemError('not_found', { detail: `The plant has no ${product} ${revision}.` });
      return Response.json(picture);
    },
  },
});
