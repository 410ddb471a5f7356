import { setTimeout } from 'node:timers/promises';
import { WebSocket } from 'ws';
import type { Entry } from '../../src/model/entry.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { PROTOCOL_VERSION, ServerMessage, SOCKET_PATH } from '../../src/protocol/socket.ts';
import { newId } from '../server/phone.ts';

const PING_EACH_MS = 1_000;
/** Of silence, after which a line counts as dead. */
const DEAD_AFTER_MS = 4_000;
const AGAIN_AFTER_MS = 300;
/** As in client/link/link.ts: the message itself is good. */
const PASSING: readonly Refusal[] = ['store-failed', 'too-fast'];
/** Of its outbox after it came in, so many at once and then one each so often: more would be too fast. */
const AT_ONCE = 20;
const EACH_MS = 100;

/**
 * A phone as the protocol asks for one: it keeps what was not acknowledged and sends it again, in order, with the same ids; it
 * notices a line that says nothing, and comes again to whatever process it is sent to. It keeps what contradicts what it
 * knew before.
 */
export class PatientPhone {
  readonly entries: Entry[] = [];
  /** Where each message is, once it was acknowledged. */
  readonly acknowledged = new Map<string, number>();
  readonly faults: string[] = [];
  connections = 0;
  private readonly outbox: string[] = [];
  private socket: WebSocket | undefined;
  private isIn = false;
  private heard = 0;
  private over = false;
  private readonly living: Promise<void>;

  /** `anyUrl`: where the proxy sends this phone now. */
  constructor(
    readonly name: string,
    private readonly token: string,
    private readonly anyUrl: () => string,
  ) {
    this.living = this.live();
  }

  /** Says something, now or as soon as it can. */
  say(): string {
    const id = newId();
    this.outbox.push(id);
    if (this.isIn) this.send(id);
    return id;
  }

  /** How many messages are not acknowledged. */
  get waiting(): number {
    return this.outbox.length;
  }

  /** Its line ends as a lost network ends it. */
  cut(): void {
    this.socket?.terminate();
  }

  async end(): Promise<void> {
    this.over = true;
    this.cut();
    await this.living;
  }

  private async live(): Promise<void> {
    while (!this.over) {
      await this.connect();
      this.isIn = false;
      if (!this.over) await setTimeout(AGAIN_AFTER_MS);
    }
  }

  /** Resolves when the line is over. */
  private connect(): Promise<void> {
    const socket = new WebSocket(this.anyUrl().replace(/^http/, 'ws') + SOCKET_PATH, {
      handshakeTimeout: DEAD_AFTER_MS,
    });
    this.socket = socket;
    this.heard = performance.now();
    const beat = setInterval(() => {
      if (performance.now() - this.heard > DEAD_AFTER_MS) socket.terminate();
      else if (this.isIn) socket.send(JSON.stringify({ t: 'ping', n: 1 }));
    }, PING_EACH_MS);
    socket.on('open', () => {
      const after = this.entries.length - 1;
      socket.send(JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token: this.token, after }));
    });
    socket.on('message', (data) => {
      this.heard = performance.now();
      this.take(ServerMessage.parse(JSON.parse(String(data))));
    });
    socket.on('error', () => {});
    return new Promise((resolve) => {
      socket.on('close', () => {
        clearInterval(beat);
        resolve();
      });
    });
  }

  private take(message: ServerMessage): void {
    if (message.t === 'caught-up') {
      this.connections += 1;
      this.isIn = true;
      void this.sendAll(this.connections);
    } else if (message.t === 'entries') for (const entry of message.entries) this.follow(entry);
    else if (message.t === 'ack') this.acknowledge(message.id, message.seq);
    else if (message.t === 'refused' && !PASSING.includes(message.reason))
      this.faults.push(`${this.name} was refused: ${message.reason}, ${message.text}`);
    // Sent again on a new line, as an outbox does it after a refusal that may pass.
    else if (message.t === 'refused') this.socket?.close();
  }

  private follow(entry: Entry): void {
    const { seq, prev } = entry;
    if (seq !== this.entries.length)
      this.faults.push(`${this.name} got entry ${seq} after ${this.entries.length - 1}`);
    const last = this.entries.at(-1);
    if (last && prev !== last.hash)
      this.faults.push(`${this.name}: entry ${seq} does not follow what it has`);
    this.entries.push(entry);
  }

  private acknowledge(id: string, seq: number): void {
    const before = this.acknowledged.get(id);
    if (before !== undefined && before !== seq)
      this.faults.push(`${this.name}: ${id} was acknowledged at ${before} and at ${seq}`);
    this.acknowledged.set(id, seq);
    const place = this.outbox.indexOf(id);
    if (place >= 0) this.outbox.splice(place, 1);
  }

  /** Until all is out, or the line is another one. */
  private async sendAll(connection: number): Promise<void> {
    for (const [n, id] of [...this.outbox].entries()) {
      if (n >= AT_ONCE) await setTimeout(EACH_MS);
      if (!this.isIn || this.connections !== connection) return;
      if (this.outbox.includes(id)) this.send(id);
    }
  }

  private send(id: string): void {
    this.socket?.send(JSON.stringify({ t: 'remark', id, text: `note ${id}` }));
  }
}
