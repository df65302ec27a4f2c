import { z } from 'zod';
import { noteContact } from '@/lib/offline/contact';
import { pageClock } from '@/lib/offline/page-clock';

const ANSWER_LIMIT_MS = 20_000;

/** An answer of the server, or why there is none. */
export type ApiAnswer<T> =
  | { ok: true; data: T }
  | { ok: false; why: 'unreachable' | 'signed_out' | 'not_permitted' | 'not_found' | 'malformed' };

/** Asks a route of our own server; what does not fit the schema counts as no answer. `body` makes it a POST. */
export async function readApi<T extends z.ZodType>(
  path: string,
  schema: T,
  body?: unknown,
): Promise<ApiAnswer<z.output<T>>> {
  try {
    const response = await pageClock.fetch(path, {
      ...(body === undefined
        ? {}
        : {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(body),
          }),
      signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
    });
    noteContact(response.status < 500);
    if (!response.ok) return { ok: false, why: reasonOf(response.status) };
    const parsed = schema.safeParse(await response.json());
    return parsed.success ? { ok: true, data: parsed.data } : { ok: false, why: 'unreachable' };
  } catch {
    noteContact(false);
    return { ok: false, why: 'unreachable' };
  }
}

/** Whether the server can be asked and answer now. */
export async function isServerThere(): Promise<boolean> {
  return (await readApi('/api/health', z.looseObject({}))).ok;
}

function reasonOf(status: number): Extract<ApiAnswer<never>, { ok: false }>['why'] {
  switch (status) {
    case 400:
      return 'malformed';
    case 401:
      return 'signed_out';
    case 403:
      return 'not_permitted';
    case 404:
      return 'not_found';
    default:
      return 'unreachable';
  }
}

/** A path with query parameters; undefined ones are left out. */
export function apiPath(path: string, parameters: Record<string, string | undefined>): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(parameters)) if (value !== undefined) query.set(name, value);
  return query.size === 0 ? path : `${path}?${query}`;
}
