import type { Report } from '../../src/conversation/inputs.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Head } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import {
  type ClientMessage,
  PROTOCOL_VERSION,
  type Presence,
  type Receipt,
  type ServerMessage,
} from '../../src/protocol/socket.ts';
import type { Socket } from './connection.ts';

/** Of a room that no other phone can join. */
const BOTH_HERE: Presence = { panel: 'online', emitter: 'online', watchers: 0 };

/** What speaks the protocol of the server from within this page, so that the seat is the real one. Nobody joins by a code. */
export abstract class PageSocket implements Socket {
  onopen: Socket['onopen'] = null;
  onclose: Socket['onclose'] = null;
  onmessage: Socket['onmessage'] = null;

  /** What is said to a phone that wants to let others in. */
  protected abstract readonly alone: { reason: Refusal; text: string };

  /** The page has the entries up to `after`. */
  protected abstract welcome(after: number): void;
  protected abstract report(message: Report): void;
  /** Of who is there to be told: by itself nobody. */
  protected received(_receipt: Receipt): void {}

  send(data: string | ArrayBufferView<ArrayBuffer>): void {
    // Without a server's speech nobody sends sound here.
    if (typeof data !== 'string') return;
    const message = JSON.parse(data) as ClientMessage;
    queueMicrotask(() => this.take(message));
  }

  close(): void {
    this.onmessage = null;
    this.onclose = null;
  }

  take(message: ClientMessage): void {
    switch (message.t) {
      case 'hello':
        this.welcome(message.after);
        return;
      case 'ping':
        this.tell({ t: 'pong', n: message.n, now: Date.now() });
        return;
      case 'invite':
      case 'admit':
        this.tell({ t: 'refused', id: message.id, ...this.alone });
        return;
      case 'receipt':
        this.received(message);
        return;
      // There is no server that hears.
      case 'talk':
      case 'read':
      case 'talk-end':
      case 'talk-drop':
        return;
      default:
        this.report(message);
    }
  }

  /** The first that is said. */
  protected greet(head: Head, role: Seat, presence = BOTH_HERE): void {
    const speech = { name: '', ready: false };
    this.tell({ t: 'welcome', v: PROTOCOL_VERSION, role, job: head.job, head, now: Date.now(), speech });
    this.tell({ t: 'presence', presence });
  }

  tell(message: ServerMessage): void {
    this.onmessage?.({ data: JSON.stringify(message) });
  }
}
