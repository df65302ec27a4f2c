import type { Server } from 'node:http';
import { createServer, type Server as PortServer, type Socket } from 'node:net';

const FIRST_BYTE_LIMIT_MS = 15_000;
// The first byte of a TLS handshake (RFC 8446, section 5.1); no HTTP request begins with it.
const TLS_HANDSHAKE = 0x16;

/**
 * One port for both: connections that begin a TLS handshake go to `secure`, all others to `plain`, so that whoever
 * types an address without https is told, and a tablet can fetch the authority before it trusts it.
 */
export function onePort(servers: { secure: Server; plain: Server }): PortServer {
  const undecided = new Set<Socket>();
  const port = createServer({ noDelay: true }, (socket) => {
    undecided.add(socket);
    const giveUp = (): void => void socket.destroy();
    socket.setTimeout(FIRST_BYTE_LIMIT_MS, giveUp);
    socket.on('error', giveUp);
    socket.once('close', () => undecided.delete(socket));
    socket.once('data', (first: Buffer) => {
      undecided.delete(socket);
      socket.setTimeout(0);
      socket.off('timeout', giveUp);
      socket.off('error', giveUp);
      socket.pause();
      socket.unshift(first);
      const server = first[0] === TLS_HANDSHAKE ? servers.secure : servers.plain;
      server.emit('connection', socket);
      process.nextTick(() => socket.resume());
    });
  });
  const close = port.close.bind(port);
  port.close = (done) => {
    for (const socket of undecided) socket.destroy();
    return close(done);
  };
  return port;
}
