import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { Role } from '../../src/protocol/access.ts';
import { SOCKET_PATH } from '../../src/protocol/socket.ts';
import type { Callers } from '../guard/callers.ts';
import { blockOf } from '../guard/guesses.ts';
import { isOwnOrigin } from '../guard/origin.ts';
import type { Entrance } from '../http/entrance.ts';
import { type Front, turnAway } from '../http/front.ts';
import { Connection, type ConnectionDeps, GOING_AWAY, SERVER_STOPS, type Wire } from './connection.ts';
import { LineElsewhere } from './line-elsewhere.ts';

/** One websocket, while it is open. */
interface Open {
  readonly wire: Wire;
  readonly connection: Connection;
  /** When something came last, ms of `performance.now`. */
  heard: number;
}

/** The websockets on the port of the pages, with a heartbeat that finds dead ones. */
export class Sockets {
  private readonly server: WebSocketServer;
  /** Oldest first. */
  private readonly open = new Map<WebSocket, Open>();
  private readonly heartbeat: NodeJS.Timeout;
  private lastBeat = performance.now();
  private isFinishing = false;

  constructor(
    private readonly deps: ConnectionDeps,
    private readonly front: Front,
    private readonly callers: Callers,
    private readonly entrance: Pick<Entrance, 'nameOf'>,
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
    const block = blockOf(this.callers.addressOf(request));
    const refusal = this.refusal(request) ?? this.fullFor(block);
    if (refusal) {
      const reason = refusal === 429 || refusal === 503 ? 'too-fast' : 'bad-message';
      this.deps.telemetry.refused('websocket', reason, block, String(refusal));
      turnAway(socket, refusal);
    } else
      this.server.handleUpgrade(request, socket, head, (ws) => {
        const signedIn = this.signedIn(request);
        const carry = this.carryFor(request, signedIn);
        this.accept(wireOf(ws, socket, { block, signedIn, carry }), ws);
      });
  }

  /** Who: where it was carried here, only the process that it came from knows. A crew is not kept out by a damaged file. */
  private signedIn(request: IncomingMessage): string | undefined {
    try {
      return this.callers.carriage?.readerIn(request.headers) ?? this.entrance.nameOf(request);
    } catch (error) {
      this.deps.log.warn({ err: error }, 'nobody knows who is signed in on a phone that has come');
      return undefined;
    }
  }

  /** What was carried here is not carried on: it could go round in a ring. */
  private carryFor(request: IncomingMessage, signedIn: string | undefined): Wire['carry'] {
    const { carriage } = this.callers;
    if (!carriage || carriage.callerIn(request.headers) !== undefined) return undefined;
    const headers = carriage.headersFor(this.callers.addressOf(request), signedIn);
    return (url, phone) => new LineElsewhere(url, headers, phone);
  }

  /** The HTTP status that refuses this request for a websocket; undefined when it may come in. */
  private refusal(request: IncomingMessage): number | undefined {
    const { url = '', headers } = request;
    const atFront = this.front.socketRefusal(request);
    if (atFront !== undefined) return atFront;
    if (url.split('?')[0] !== SOCKET_PATH) return 404;
    if (!isOwnOrigin(headers.origin, headers.host)) return 403;
    return undefined;
  }

  /** The same, when there is no place for one more of this block. A silent connection gives way to a new one. */
  private fullFor(block: string): number | undefined {
    if (this.isFinishing) return 503;
    const { maxConnections, maxConnectionsPerBlock, maxSilentPerBlock } = this.deps.limits;
    const ofBlock = [...this.open.values()].filter(({ wire }) => wire.block === block);
    const silent = ofBlock.filter(({ connection }) => !connection.isIn).length;
    if (silent >= maxSilentPerBlock || ofBlock.length >= maxConnectionsPerBlock) return 429;
    if (this.open.size < maxConnections) return undefined;
    const [oldest] = [...this.open].find(([, { connection }]) => !connection.isIn) ?? [];
    if (!oldest) return 503;
    this.open.delete(oldest);
    oldest.terminate();
    return undefined;
  }

  /** Handlers are set before anything is awaited: a phone may send its first frame while it connects. */
  private accept(wire: Wire, ws: WebSocket): void {
    const connection = new Connection(wire, this.deps);
    const one: Open = { wire, connection, heard: performance.now() };
    this.open.set(ws, one);
    const heard = () => {
      one.heard = performance.now();
    };
    ws.on('message', (data: Buffer, isBinary) => {
      heard();
      if (isBinary) connection.onSound(data);
      else connection.onText(data.toString('utf8'));
    });
    ws.on('pong', heard);
    ws.on('close', () => {
      this.open.delete(ws);
      connection.onClose();
    });
    // A frame that is too large or malformed. `ws` itself closes with the right code.
    ws.on('error', (error) => this.deps.log.info({ err: error }, 'a websocket failed'));
  }

  /** How many are open, by the role of who is at the other end; `none` has not come in yet. */
  counts(): Map<Role | 'none', number> {
    const counts = new Map<Role | 'none', number>(
      [...Role.options, 'none' as const].map((role) => [role, 0]),
    );
    for (const { connection } of this.open.values()) {
      const role = connection.isIn ? connection.role : 'none';
      counts.set(role, (counts.get(role) ?? 0) + 1);
    }
    return counts;
  }

  /**
   * Finds the dead. While the server itself was late, it could not hear anybody: that time counts against nobody. A phone
   * that was heard since the last beat is asked at the next one, if it says nothing by itself until then.
   */
  private beat(): void {
    const { pingEveryMs, deadAfterMs } = this.deps.limits;
    const now = performance.now();
    const late = Math.max(0, now - this.lastBeat - pingEveryMs);
    this.lastBeat = now;
    for (const [ws, one] of this.open) {
      one.heard = Math.min(now, one.heard + late);
      const silentMs = now - one.heard;
      if (silentMs > deadAfterMs) ws.terminate();
      else if (silentMs >= pingEveryMs && ws.readyState === ws.OPEN) ws.ping();
    }
  }

  /** Tells every phone that the server stops, takes no more, and resolves when all that came is answered. */
  async finish(): Promise<void> {
    this.isFinishing = true;
    await Promise.all([...this.open.values()].map(({ connection }) => connection.finish()));
  }

  /** Resolves when all are closed; who does not answer in time is cut. */
  async close(): Promise<void> {
    clearInterval(this.heartbeat);
    const closed = [...this.open.keys()].map((ws) => {
      ws.close(GOING_AWAY, SERVER_STOPS);
      return new Promise<void>((resolve) => ws.once('close', () => resolve()));
    });
    const cut = setTimeout(() => {
      for (const ws of this.open.keys()) ws.terminate();
    }, this.deps.limits.closeWithinMs);
    await Promise.all(closed);
    clearTimeout(cut);
    this.server.close();
  }
}

/** What is sent to one phone before anything else has its turn leaves in one piece: entries, and that they are acknowledged. */
function wireOf(ws: WebSocket, socket: Duplex, from: Pick<Wire, 'block' | 'signedIn' | 'carry'>): Wire {
  let isGathering = false;
  /** Bytes that waited before what is being gathered: what has not been offered to the line yet says nothing about its speed. */
  let waited = 0;
  const leave = () => {
    isGathering = false;
    socket.uncork();
  };
  const gather = () => {
    if (isGathering) return;
    isGathering = true;
    waited = ws.bufferedAmount;
    socket.cork();
    process.nextTick(leave);
  };
  return {
    ...from,
    send(frame, sent) {
      gather();
      ws.send(frame, { binary: false }, sent && (() => sent()));
    },
    close: (code, reason) => ws.close(code, reason),
    cut: () => ws.terminate(),
    get waiting() {
      return isGathering ? waited : ws.bufferedAmount;
    },
  };
}
