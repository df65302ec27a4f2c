import { createServer, type IncomingMessage, request as openRequest, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What can go wrong between a device and the server. */
export const FAULTS = [
  'drop_before',
  'drop_after_commit',
  'duplicate',
  'reorder',
  'server_error',
  'slow',
  'cut_question',
  'cut_answer',
] as const;
export type Fault = (typeof FAULTS)[number];

const SLOW_MS = 400;
const EVENTS = '/api/events';

type Question = { method: string; path: string; headers: IncomingMessage['headers']; body: Buffer };
type Answer = { status: number; headers: IncomingMessage['headers']; body: Buffer };

/** A network that fails as it is told to; `counts` says how often it did. */
export type FaultProxy = {
  origin: string;
  counts: Record<Fault, number>;
  /** Delivers what it has kept back. */
  flush(): Promise<void>;
  close(): Promise<void>;
};

/**
 * Stands between browsers and the server at `target`. Every request that brings events meets what `choose` says, null
 * for nothing; all others pass as they are.
 */
export async function openFaultProxy(target: string, choose: () => Fault | null): Promise<FaultProxy> {
  const counts = Object.fromEntries(FAULTS.map((fault) => [fault, 0])) as Record<Fault, number>;
  let keptBack: Question[] = [];
  const flush = async (): Promise<void> => {
    const late = keptBack;
    keptBack = [];
    for (const question of late) await ask(target, question).catch(() => undefined);
  };
  const server = createServer((incoming, outgoing) => {
    outgoing.on('error', () => undefined);
    if (incoming.method !== 'POST' || incoming.url !== EVENTS) {
      pass(target, incoming, outgoing);
      return;
    }
    const fault = choose();
    if (fault !== null) counts[fault] += 1;
    void readAll(incoming)
      .then(async (body) => {
        const question = { method: 'POST', path: EVENTS, headers: incoming.headers, body };
        if (fault === 'reorder') {
          keptBack.push(question);
          outgoing.destroy();
          return;
        }
        await meet(fault, { target, question, outgoing });
        await flush();
      })
      // A server that is not there is a fault of its own.
      .catch(() => outgoing.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    counts,
    flush,
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

async function meet(
  fault: Exclude<Fault, 'reorder'> | null,
  { target, question, outgoing }: { target: string; question: Question; outgoing: ServerResponse },
): Promise<void> {
  switch (fault) {
    case 'drop_before':
      outgoing.destroy();
      return;
    case 'server_error':
      outgoing.writeHead(503, { 'content-type': 'application/problem+json' }).end('{"status":503}');
      return;
    case 'cut_question':
      await sendHalf(target, question);
      outgoing.destroy();
      return;
    case 'drop_after_commit':
      await ask(target, question);
      outgoing.destroy();
      return;
    case 'duplicate':
      await ask(target, question);
      break;
    case 'slow':
      await new Promise((resolve) => setTimeout(resolve, SLOW_MS));
      break;
    default:
  }
  const { status, headers, body } = await ask(target, question);
  const { 'transfer-encoding': _, ...kept } = headers;
  outgoing.writeHead(status, { ...kept, 'content-length': body.length });
  if (fault === 'cut_answer')
    outgoing.write(body.subarray(0, Math.ceil(body.length / 2)), () => outgoing.destroy());
  else outgoing.end(body);
}

function ask(target: string, { method, path, headers, body }: Question): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = openRequest(target + path, { method, headers, agent: false }, (response) => {
      readAll(response).then(
        (answer) => resolve({ status: response.statusCode ?? 502, headers: response.headers, body: answer }),
        reject,
      );
    });
    request.on('error', reject);
    request.end(body);
  });
}

/** The connection ends in the middle of what is sent. */
function sendHalf(target: string, { method, path, headers, body }: Question): Promise<void> {
  return new Promise((resolve) => {
    const request = openRequest(target + path, { method, headers, agent: false });
    request.on('error', () => undefined);
    request.write(body.subarray(0, Math.ceil(body.length / 2)), () => {
      request.destroy();
      resolve();
    });
  });
}

function pass(target: string, incoming: IncomingMessage, outgoing: ServerResponse): void {
  const { method, headers, url = '/' } = incoming;
  const request = openRequest(target + url, { method, headers, agent: false }, (response) => {
    outgoing.writeHead(response.statusCode ?? 502, response.headers);
    response.on('error', () => outgoing.destroy());
    response.pipe(outgoing);
  });
  request.on('error', () => outgoing.destroy());
  outgoing.on('close', () => request.destroy());
  incoming.pipe(request);
}

async function readAll(stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part);
  return Buffer.concat(parts);
}
