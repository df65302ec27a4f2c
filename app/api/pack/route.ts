import { packQuestionSchema } from '@/lib/domain/packing/pack-picture';
import { defineRoute } from '@/lib/server/http/define-route';
import { readQuery } from '@/lib/server/http/read-query';
import { readPack } from '@/lib/server/read-pack';

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: {
    action: 'screen:pack',
    async handle(request) {
      const { container } = readQuery(request, packQuestionSchema);
      return Response.json(await readPack(container));
    },
  },
});
