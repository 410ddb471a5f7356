import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { SOCKET_PATH } from '../../src/protocol/socket.ts';
import { isOwnOrigin } from '../guard/origin.ts';
import { type Front, turnAway } from '../http/front.ts';
import { Connection, type ConnectionDeps, type Wire } from './connection.ts';

/** The websockets on the port of the pages, with a heartbeat that finds dead ones. */
export class Sockets {
  private readonly server: WebSocketServer;
  private readonly lastHeard = new Map<WebSocket, number>();
  private readonly heartbeat: NodeJS.Timeout;

  constructor(
    private readonly deps: ConnectionDeps,
    private readonly front: Front,
  ) {
    const { limits } = deps;
    this.server = new WebSocketServer({
      noServer: true,
      maxPayload: limits.maxFrameBytes,
      // Compressing small frames saves little, and costs memory for each connection.
      perMessageDeflate: false,
    });
    this.server.on('wsClientError', (_, socket) => turnAway(socket, 400));
    this.heartbeat = setInterval(() => this.beat(), limits.pingEveryMs);
  }

  attach(http: Server): void {
    http.on('upgrade', (request, socket, head) => this.upgrade(request, socket, head));
  }

  private upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    socket.on('error', () => socket.destroy());
    const refusal = this.refusal(request);
    if (refusal) turnAway(socket, refusal);
    else this.server.handleUpgrade(request, socket, head, (ws) => this.accept(ws));
  }

  /** The HTTP status that refuses this request for a websocket; undefined when it may come in. */
  private refusal(request: IncomingMessage): number | undefined {
    const { url = '', headers } = request;
    const atFront = this.front.socketRefusal(request);
    if (atFront !== undefined) return atFront;
    if (url.split('?')[0] !== SOCKET_PATH) return 404;
    if (!isOwnOrigin(headers.origin, headers.host)) return 403;
    if (this.lastHeard.size >= this.deps.limits.maxConnections) return 503;
    return undefined;
  }

  /** Handlers are set before anything is awaited: a phone may send its first frame while it connects. */
  private accept(ws: WebSocket): void {
    const connection = new Connection(wireOf(ws), this.deps);
    const heard = () => this.lastHeard.set(ws, performance.now());
    heard();
    ws.on('message', (data: Buffer, isBinary) => {
      heard();
      if (isBinary) connection.onSound(data);
      else connection.onText(data.toString('utf8'));
    });
    ws.on('pong', heard);
    ws.on('close', () => {
      this.lastHeard.delete(ws);
      connection.onClose();
    });
    // A frame that is too large or malformed. `ws` itself closes with the right code.
    ws.on('error', (error) => this.deps.log.info({ err: error }, 'a websocket failed'));
  }

  private beat(): void {
    const deadBefore = performance.now() - this.deps.limits.deadAfterMs;
    for (const [ws, at] of this.lastHeard) {
      if (at < deadBefore) ws.terminate();
      else if (ws.readyState === ws.OPEN) ws.ping();
    }
  }

  close(): void {
    clearInterval(this.heartbeat);
    for (const ws of this.lastHeard.keys()) ws.terminate();
    this.server.close();
  }
}

function wireOf(ws: WebSocket): Wire {
  return {
    send: (text, sent) => ws.send(text, () => sent?.()),
    close: (code, reason) => ws.close(code, reason),
    cut: () => ws.terminate(),
    get waiting() {
      return ws.bufferedAmount;
    },
  };
}
