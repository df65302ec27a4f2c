import { createServer, type RequestListener, type Server } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { AddressInfo, Server as PortServer } from 'node:net';
import next from 'next';
import { admitRequest } from '@/lib/server/http/admit-request';
import { describePort } from '../bootstrap/find-conflict.mjs';
import { StartProblem } from './start-problem';
import type { KeyPair } from './tls/issue-certificates';
import { onePort } from './tls/one-port';
import { plainRequests } from './tls/plain-requests';

const headersTimeoutMs = 15_000;
const requestTimeoutMs = 120_000;
const keepAliveTimeoutMs = 10_000;
const inFlightLimitMs = 10_000;

/** A listening server with the port it was given; `stop` lets requests in flight end, unless told to hurry. */
export type HttpServer = {
  port: number;
  /** Answers new connections with another certificate; nothing on plain HTTP. */
  useCertificate(pair: KeyPair): void;
  stop(hurry: AbortSignal): Promise<void>;
};

/** Loads the production build (or compiles pages as they change, with `dev`) and listens, by HTTPS with `pair`. */
export async function startHttpServer(options: {
  host: string;
  port: number;
  dev: boolean;
  pair: KeyPair | null;
}): Promise<HttpServer> {
  const { host, port, dev, pair } = options;
  const app = next({ dev, dir: process.cwd(), hostname: host, port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const answer: RequestListener = (request, response) => {
    if (!admitRequest(request, response)) return;
    handle(request, response).catch((error: unknown) => {
      console.error(error);
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  };
  const secure = pair === null ? null : createSecureServer({ ...pair, minVersion: 'TLSv1.2' }, answer);
  const plain = createServer(secure === null ? answer : plainRequests(answer));
  const servers = secure === null ? [plain] : [secure, plain];
  for (const each of servers) limit(each);
  if (dev) (secure ?? plain).on('upgrade', app.getUpgradeHandler());
  const server = secure === null ? plain : onePort({ secure, plain });
  await listen(server, host, port);
  return {
    port: portOf(server.address()),
    useCertificate: (next) => secure?.setSecureContext({ ...next, minVersion: 'TLSv1.2' }),
    async stop(hurry) {
      await endRequests(server, servers, hurry);
      await app.close();
    },
  };
}

function limit(server: Server): void {
  server.headersTimeout = headersTimeoutMs;
  server.requestTimeout = requestTimeoutMs;
  server.keepAliveTimeout = keepAliveTimeoutMs;
}

async function listen(server: PortServer, host: string, port: number): Promise<void> {
  const failure = await new Promise<NodeJS.ErrnoException | null>((resolve) => {
    server.once('error', resolve);
    server.listen({ host, port }, () => resolve(null));
  });
  if (failure === null) return;
  if (failure.code === 'EADDRINUSE') throw new StartProblem(await describePort(host, port));
  throw new StartProblem(`Cannot listen on ${host}, port ${port}: ${failure.message}`);
}

function endRequests(port: PortServer, servers: readonly Server[], hurry: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const cutOff = (): void => {
      for (const server of servers) server.closeAllConnections();
    };
    const timer = setTimeout(cutOff, inFlightLimitMs);
    hurry.addEventListener('abort', cutOff);
    port.close(() => {
      clearTimeout(timer);
      resolve();
    });
    for (const server of servers) server.closeIdleConnections();
  });
}

function portOf(address: AddressInfo | string | null): number {
  return address !== null && typeof address === 'object' ? address.port : 0;
}
