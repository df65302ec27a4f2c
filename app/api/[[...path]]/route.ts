import { defineRoute, type Handler } from '@/lib/server/http/define-route';
import { ProblemError } from '@/lib/server/http/problem';

/** Addresses that no route has: 401 as everywhere without a session, else 404 whatever the method. */
const nowhere: Handler = {
  action: 'contract',
  async handle() {
    throw new ProblemError('not_found', { detail: 'No route has this address.' });
  },
};

export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = defineRoute({
  GET: nowhere,
  POST: nowhere,
  PUT: nowhere,
  PATCH: nowhere,
  DELETE: nowhere,
});
