import { toInput } from '../../src/conversation/inputs.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Practice } from '../../src/model/practice.ts';
import { NOBODY_JOINS } from '../../src/phrases/practice.ts';
import { Play } from '../../src/practice/play.ts';
import { type ClientMessage, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import type { Socket } from '../link/connection.ts';
import { PageSocket } from '../link/page-socket.ts';

const TICK_MS = 250;

/**
 * A practice job that runs in this page alone: it speaks the protocol of the server, so that the seat is the real one.
 * The other seat is simulated. Nothing of it is stored or sent.
 */
export function inPageRoom(practice: Practice, seat: Seat): () => Socket {
  const other: Seat = seat === 'panel' ? 'emitter' : 'panel';
  const play = new Play(practice, [other], Date.now());
  return () => new InPageSocket(play, seat);
}

class InPageSocket extends PageSocket {
  private sent = 0;
  private readonly timer: ReturnType<typeof setInterval>;

  constructor(
    private readonly play: Play,
    private readonly seat: Seat,
  ) {
    super();
    this.timer = setInterval(() => this.pass(), TICK_MS);
    queueMicrotask(() => this.onopen?.());
  }

  override close(): void {
    super.close();
    clearInterval(this.timer);
  }

  protected take(message: ClientMessage): void {
    switch (message.t) {
      case 'hello':
        this.welcome(message.after);
        return;
      case 'ping':
        this.tell({ t: 'pong', n: message.n, now: Date.now() });
        return;
      case 'invite':
        this.tell({ t: 'refused', id: message.id, reason: 'seat-in-use', text: NOBODY_JOINS });
        return;
      // There is no other phone to tell.
      case 'admit':
      case 'receipt':
      case 'talk':
      case 'read':
      case 'talk-end':
      case 'talk-drop':
        return;
      default: {
        this.pass();
        const { id } = message;
        const response = this.play.take(toInput(message, this.seat), id);
        this.pass();
        if (response.kind === 'facts') this.tell({ t: 'ack', id, seq: this.sent - 1 });
        else this.tell({ t: 'refused', id, reason: response.reason, text: response.text });
      }
    }
  }

  private welcome(after: number): void {
    const { head } = this.play;
    const speech = { name: '', ready: false };
    const now = Date.now();
    const presence = { panel: 'online', emitter: 'online', watchers: 0 } as const;
    this.sent = after + 1;
    this.tell({ t: 'welcome', v: PROTOCOL_VERSION, role: this.seat, job: head.job, head, now, speech });
    this.tell({ t: 'presence', presence });
    this.pass();
    this.tell({ t: 'caught-up', seq: this.sent - 1 });
  }

  /** Lets time pass, and gives out what was added. */
  private pass(): void {
    this.play.passTo(Date.now());
    const entries = this.play.entries.slice(this.sent);
    if (entries.length === 0) return;
    this.sent += entries.length;
    this.tell({ t: 'entries', entries });
  }
}
