import { setTimeout } from 'node:timers/promises';
import { WebSocket } from 'ws';
import { PING_EVERY_MS, PROTOCOL_VERSION } from '../../../src/protocol/socket.ts';

/** Between the end of a line and the next try, and before what was refused is sent again, ms. */
const AGAIN_AFTER_MS = 300;
const TRIES = 200;

/** How a phone comes in. */
export interface ComesBy {
  /** The process that the proxy gives it now. */
  readonly url: () => string;
  readonly path: string;
  /** Without one there is no protocol: what is sent is what comes. */
  readonly token?: string;
  /** Whether it sends a ping each two seconds, as R21 of the protocol has it. */
  readonly pings: boolean;
}

/** What comes to it, but for pongs. */
export interface Hears {
  // biome-ignore lint/suspicious/noExplicitAny: a bench that checked each frame would measure itself.
  frame(frame: any, phone: BenchPhone): void;
  closed(code: number): void;
}

/**
 * A phone as the protocol has it, with as little work for each frame as can be: when its line ends it comes again, after what it has,
 * and sends again what was not acknowledged.
 */
export class BenchPhone {
  /** Not acknowledged, in order. */
  private readonly outbox = new Map<string, string>();
  private socket: WebSocket | undefined;
  private isIn = false;
  private last = -1;
  private pinging: NodeJS.Timeout | undefined;

  constructor(
    private readonly by: ComesBy,
    private readonly hears: Hears,
  ) {}

  /** Resolves when it is in, and all history has come. */
  async come(): Promise<void> {
    for (let tries = 0; !(await this.connect()); tries++) {
      if (tries === TRIES) throw new Error('a phone is not let in');
      await setTimeout(AGAIN_AFTER_MS);
    }
  }

  send(id: string, frame: string): void {
    if (this.by.token !== undefined) this.outbox.set(id, frame);
    if (this.isIn) this.socket?.send(frame);
  }

  /** Whether it came in; false where the line ended before. */
  private connect(): Promise<boolean> {
    const { url, path, token } = this.by;
    const socket = new WebSocket(url().replace(/^http/, 'ws') + path, { perMessageDeflate: false });
    this.socket = socket;
    return new Promise((resolve) => {
      const comeIn = () => {
        this.isIn = true;
        if (this.by.pings) void this.ping(socket);
        for (const frame of this.outbox.values()) socket.send(frame);
        resolve(true);
      };
      socket.on('open', () => {
        if (token === undefined) comeIn();
        else socket.send(JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token, after: this.last }));
      });
      socket.on('message', (data) => {
        const text = String(data);
        if (text.startsWith('{"t":"pong"')) return;
        const frame = JSON.parse(text);
        if (frame.t === 'caught-up') comeIn();
        else this.take(frame);
      });
      // It is closed then, too.
      socket.on('error', () => {});
      socket.on('close', (code) => {
        clearInterval(this.pinging);
        resolve(false);
        if (!this.isIn) return;
        this.isIn = false;
        this.hears.closed(code);
        void setTimeout(AGAIN_AFTER_MS).then(() => this.come());
      });
    });
  }

  // biome-ignore lint/suspicious/noExplicitAny: as above.
  private take(frame: any): void {
    if (frame.t === 'entries') this.last = frame.entries.at(-1)?.seq ?? this.last;
    else if (frame.t === 'ack') this.outbox.delete(frame.id);
    else if (frame.t === 'refused') void this.sendLater(frame.id);
    this.hears.frame(frame, this);
  }

  private async sendLater(id: string): Promise<void> {
    await setTimeout(AGAIN_AFTER_MS);
    const frame = this.outbox.get(id);
    if (frame !== undefined && this.isIn) this.socket?.send(frame);
  }

  /** The first one at any time within the two seconds: phones do not come at the same moment. */
  private async ping(socket: WebSocket): Promise<void> {
    await setTimeout(Math.random() * PING_EVERY_MS);
    if (socket !== this.socket || !this.isIn) return;
    let n = 0;
    this.pinging = setInterval(() => socket.send(JSON.stringify({ t: 'ping', n: n++ })), PING_EVERY_MS);
  }
}
