import type { InputError } from '@/lib/domain/input-errors';
import { nestingDepth } from '@/lib/server/http/nesting-depth';
import { ProblemError } from '@/lib/server/http/problem';

/** Largest body in bytes, from the wire contract. */
export const BODY_BYTES_MAX = 4 * 1024 * 1024;
// How much of a body beyond that is still taken off the wire before the connection is given up.
const DRAINED_BYTES_MAX = 64 * 1024 * 1024;
// The deepest document of the contract nests eight levels; nobody's schema or database should meet a tower of them.
const NESTING_DEPTH_MAX = 64;

// JSON by name, and what clients write by themselves when nobody named a type; another site cannot use that, since a
// session answers its own pages only.
const JSON_TYPES = ['', 'application/json', 'text/plain', 'application/x-www-form-urlencoded'];

/**
 * Reads a request's JSON body; throws a `ProblemError` when it is too large (413), not JSON by its type (415), not
 * UTF-8, not JSON by its text or nested beyond reason (400). A body whose type nobody chose is taken for JSON.
 */
export async function readJsonBody(request: Request): Promise<unknown> {
  requireJsonType(request.headers);
  const text = decode(await readBytes(request));
  if (nestingDepth(text) > NESTING_DEPTH_MAX)
    throw malformed('nested_too_deep', `The body nests more than ${NESTING_DEPTH_MAX} levels.`);
  try {
    return JSON.parse(text);
  } catch {
    throw malformed('not_json', 'The body is not a complete JSON document.');
  }
}

/** Reads a body of at most 4 MiB, whatever its length was said to be; throws a `ProblemError` (413) beyond that. */
async function readBytes(request: Request): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let byteCount = 0;
  for await (const chunk of chunksOf(request)) {
    byteCount += chunk.byteLength;
    // What is too large is read on and thrown away: a client that still sends would not see an answer, and leaving
    // the stream early ends the connection under it and under its next request.
    if (byteCount <= BODY_BYTES_MAX) chunks.push(chunk);
    else if (byteCount > DRAINED_BYTES_MAX) break;
  }
  if (byteCount > BODY_BYTES_MAX)
    throw new ProblemError('body_too_large', { detail: 'A body has at most 4 MiB (4,194,304 bytes).' });
  return Buffer.concat(chunks, byteCount);
}

async function* chunksOf(request: Request): AsyncGenerator<Uint8Array> {
  try {
    yield* request.body ?? [];
  } catch {
    // The client left in the middle; nobody reads this answer.
    throw malformed('incomplete', 'The body ended before its end.');
  }
}

function requireJsonType(headers: Headers): void {
  const type = headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() ?? '';
  if (!JSON_TYPES.includes(type) && !type.endsWith('+json'))
    throw new ProblemError('unsupported_media_type', { detail: 'Send the body as application/json.' });
  const encoding = headers.get('content-encoding')?.trim().toLowerCase() ?? '';
  if (encoding !== '' && encoding !== 'identity')
    throw new ProblemError('unsupported_media_type', { detail: 'Send the body without a content encoding.' });
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw malformed('not_utf8', 'The body is not valid UTF-8.');
  }
}

function malformed(code: string, detail: string): ProblemError {
  const errors: InputError[] = [{ pointer: '', code, detail }];
  return new ProblemError('malformed', { detail, errors });
}
