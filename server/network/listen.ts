import {
  createServer as createHttp,
  type Server as HttpServer,
  type RequestListener,
  type ServerOptions,
} from 'node:http';
import { createServer as createHttps } from 'node:https';
import { type AddressInfo, createServer as createNet, type Server as NetServer, type Socket } from 'node:net';
import { StartFailure } from '../process/start-failure.ts';
import type { KeyPair } from './authority.ts';

export interface Listener {
  port: number;
  /** For connections from now on. */
  useCertificate(pair: KeyPair): void;
  /** Takes no more connections, and cuts the open ones. */
  close(): Promise<void>;
}

/** First byte of a TLS handshake record (RFC 8446, section 5.1). */
const TLS_HANDSHAKE = 22;

/**
 * Listens on one port. With a certificate, TLS and plain HTTP share the port: the first byte shows which one it is.
 * `attach` is called with each server inside it, before it takes anything. `admits` tells whether a connection may stay.
 * Rejects with `StartFailure`.
 */
export async function listen(
  host: string,
  port: number,
  tls: KeyPair | undefined,
  settings: ServerOptions,
  handle: RequestListener,
  attach: (server: HttpServer) => void,
  admits: (socket: Socket) => boolean = () => true,
): Promise<Listener> {
  const plain = createHttp(settings, handle);
  attach(plain);
  const stays = (socket: Socket) => {
    const isAdmitted = admits(socket);
    if (!isAdmitted) socket.destroy();
    return isAdmitted;
  };
  if (!tls) {
    plain.prependListener('connection', stays);
    return started(plain, host, port, noCertificate, () => plain.closeAllConnections());
  }
  const firstByteWithinMs = settings.headersTimeout ?? FIRST_BYTE_WITHIN_MS;
  const secure = createHttps(
    { ...settings, cert: tls.cert, key: tls.key, handshakeTimeout: firstByteWithinMs },
    handle,
  );
  attach(secure);
  // Node looks for requests that never end only in a server that listens, and these two get what the door has taken.
  for (const server of [plain, secure]) server.emit('listening');

  const open = new Set<Socket>();
  const door = createNet((socket) => {
    open.add(socket);
    socket.on('close', () => open.delete(socket));
    socket.on('error', () => socket.destroy());
    if (!stays(socket)) return;
    socket.setTimeout(firstByteWithinMs, () => socket.destroy());
    socket.once('data', (first) => {
      socket.setTimeout(0);
      socket.removeAllListeners('timeout');
      socket.pause();
      socket.unshift(first);
      (first[0] === TLS_HANDSHAKE ? secure : plain).emit('connection', socket);
      process.nextTick(() => socket.resume());
    });
  });
  const useCertificate = ({ cert, key }: KeyPair) => secure.setSecureContext({ cert, key });
  return started(door, host, port, useCertificate, () => {
    for (const server of [plain, secure]) server.close();
    for (const socket of open) socket.destroy();
  });
}

const noCertificate = () => {};

const FIRST_BYTE_WITHIN_MS = 10_000;

function started(
  server: NetServer,
  host: string,
  port: number,
  useCertificate: Listener['useCertificate'],
  cut: () => void,
): Promise<Listener> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(new StartFailure(explain(error, host, port))),
    );
    server.listen(port, host, () => {
      resolve({
        port: (server.address() as AddressInfo).port,
        useCertificate,
        close: () =>
          new Promise((closed) => {
            server.close(() => closed());
            cut();
          }),
      });
    });
  });
}

function explain(error: NodeJS.ErrnoException, host: string, port: number): string {
  switch (error.code) {
    case 'EADDRINUSE':
      return `port ${port} is in use: stop the program that uses it, or choose another port with --port.`;
    case 'EACCES':
      return `this user may not open port ${port}: choose a port above 1023 with --port.`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `${host} is not an address of this machine: choose another with --host.`;
    default:
      return `cannot listen on ${host}, port ${port}: ${error.message}`;
  }
}
