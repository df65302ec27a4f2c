import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import next from 'next';
import { admitRequest } from '@/lib/server/http/admit-request';
import { describePort } from '../bootstrap/find-conflict.mjs';
import { StartProblem } from './start-problem';

const headersTimeoutMs = 15_000;
const requestTimeoutMs = 120_000;
const keepAliveTimeoutMs = 10_000;
const inFlightLimitMs = 10_000;

/** A listening server with the port it was given; `stop` lets requests in flight end, unless told to hurry. */
export type HttpServer = { port: number; stop(hurry: AbortSignal): Promise<void> };

/** Loads the production build (or compiles pages as they change, with `dev`) and listens. */
export async function startHttpServer(options: {
  host: string;
  port: number;
  dev: boolean;
}): Promise<HttpServer> {
  const { host, port, dev } = options;
  const app = next({ dev, dir: process.cwd(), hostname: host, port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const server = createServer((request, response) => {
    if (!admitRequest(request, response)) return;
    handle(request, response).catch((error: unknown) => {
      console.error(error);
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  server.headersTimeout = headersTimeoutMs;
  server.requestTimeout = requestTimeoutMs;
  server.keepAliveTimeout = keepAliveTimeoutMs;
  if (dev) server.on('upgrade', app.getUpgradeHandler());
  await listen(server, host, port);
  return {
    port: portOf(server.address()),
    async stop(hurry) {
      await endRequests(server, hurry);
      await app.close();
    },
  };
}

async function listen(server: Server, host: string, port: number): Promise<void> {
  const failure = await new Promise<NodeJS.ErrnoException | null>((resolve) => {
    server.once('error', resolve);
    server.listen({ host, port }, () => resolve(null));
  });
  if (failure === null) return;
  if (failure.code === 'EADDRINUSE') throw new StartProblem(await describePort(host, port));
  throw new StartProblem(`Cannot listen on ${host}, port ${port}: ${failure.message}`);
}

function endRequests(server: Server, hurry: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const cutOff = (): void => server.closeAllConnections();
    const timer = setTimeout(cutOff, inFlightLimitMs);
    hurry.addEventListener('abort', cutOff);
    server.close(() => {
      clearTimeout(timer);
      resolve();
    });
    server.closeIdleConnections();
  });
}

function portOf(address: AddressInfo | string | null): number {
  return address !== null && typeof address === 'object' ? address.port : 0;
}
