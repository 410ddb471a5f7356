import type { IncomingMessage, OutgoingHttpHeaders, RequestListener, Server } from 'node:http';
import { STATUS_CODES } from 'node:http';
import type { Duplex } from 'node:stream';
import type { TLSSocket } from 'node:tls';
import type { Refusal } from '../../src/model/refusal.ts';
import { UNKNOWN_HOST } from '../../src/phrases/no-page.ts';
import { isFixed, isKnownHost, nameIn } from '../guard/hosts.ts';
import { protectiveHeaders, STRICT_TRANSPORT } from './headers.ts';
import { noticePage } from './notice.ts';

/** Who may come in at all, before anything is known of a request but its first lines. */
export interface FrontRules {
  /** Whether people reach this server under a name; addresses and `localhost` are not asked about. */
  isOurs: (name: string) => boolean;
  /** Whether phones trust our certificate: then pages are given over https alone, but to this machine. */
  isTrusted: () => boolean;
  isThisMachine: (address: string) => boolean;
  /** Told of each request for a host that is not ours, with the status of the answer. */
  onMisdirected: (request: IncomingMessage, status: number) => void;
}

const BAD_REQUEST = 400;
const MISDIRECTED = 421;
const PERMANENT_REDIRECT = 308;

/** Node's own answer to a request without a Host has no headers, so `Front` gives it. */
export const SERVER_SETTINGS = { requireHostHeader: false };

/**
 * Stands before everything that answers over HTTP: puts the protective headers on every answer, refuses a Host that is
 * not ours, and sends people to https where that is to be had.
 */
export class Front {
  constructor(private readonly rules: FrontRules) {}

  guards(app: RequestListener): RequestListener {
    return (request, response) => {
      for (const [name, value] of Object.entries(this.headersFor(request))) {
        if (value !== undefined) response.setHeader(name, value);
      }
      const { host } = request.headers;
      if (!isKnownHost(host, this.rules.isOurs)) {
        const isApi = request.url?.startsWith('/api/') ?? false;
        const body = isApi
          ? JSON.stringify({ reason: 'bad-message' satisfies Refusal, text: UNKNOWN_HOST.text })
          : noticePage(UNKNOWN_HOST);
        const type = isApi ? 'application/json' : 'text/html; charset=utf-8';
        const status = host === undefined ? BAD_REQUEST : MISDIRECTED;
        this.rules.onMisdirected(request, status);
        response.writeHead(status, { 'Content-Type': type, 'Cache-Control': 'no-store' }).end(body);
      } else if (this.mustBeSecure(request)) {
        const location = `https://${host ?? ''}${request.url ?? '/'}`;
        response.writeHead(PERMANENT_REDIRECT, { Location: location, Connection: 'close' }).end();
      } else app(request, response);
    };
  }

  /** The HTTP status that refuses a request for a websocket; undefined when it may come in. */
  socketRefusal(request: IncomingMessage): number | undefined {
    if (!isKnownHost(request.headers.host, this.rules.isOurs)) return MISDIRECTED;
    return this.mustBeSecure(request) ? 426 : undefined;
  }

  /** What is no HTTP gets an answer too, and that has the headers. */
  answerBroken(server: Server): void {
    server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
      if (error.code === 'ECONNRESET' || !socket.writable) socket.destroy();
      else turnAway(socket, BROKEN[error.code ?? ''] ?? BAD_REQUEST);
    });
  }

  private mustBeSecure({ socket }: IncomingMessage): boolean {
    const { isTrusted, isThisMachine } = this.rules;
    return isTrusted() && !isSecure(socket) && !isThisMachine(socket.remoteAddress ?? '');
  }

  private headersFor({ headers: { host }, socket }: IncomingMessage): OutgoingHttpHeaders {
    const isKnown = isKnownHost(host, this.rules.isOurs);
    const name = nameIn(host ?? '');
    const isStrict = this.rules.isTrusted() && isSecure(socket) && name !== undefined && !isFixed(name);
    return { ...protectiveHeaders(isKnown ? host : undefined), ...(isStrict && STRICT_TRANSPORT) };
  }
}

const isSecure = (socket: IncomingMessage['socket']): boolean => (socket as TLSSocket).encrypted === true;

/** As Node itself answers these. */
const BROKEN: Record<string, number> = { HPE_HEADER_OVERFLOW: 431, ERR_HTTP_REQUEST_TIMEOUT: 408 };

/** Ends a connection that is no request we take, with a status alone. */
export function turnAway(socket: Duplex, status: number): void {
  const headers = Object.entries({
    ...protectiveHeaders(undefined),
    Connection: 'close',
    'Content-Length': 0,
  });
  const lines = headers.map(([name, value]) => `${name}: ${value}\r\n`).join('');
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status] ?? ''}\r\n${lines}\r\n`);
}
