import { type Report, toInput } from '../../src/conversation/inputs.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Practice } from '../../src/model/practice.ts';
import { NOBODY_JOINS } from '../../src/phrases/practice.ts';
import { Play } from '../../src/practice/play.ts';
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
  protected readonly alone = { reason: 'seat-in-use', text: NOBODY_JOINS } as const;
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

  protected report(message: Report): void {
    this.pass();
    const { id } = message;
    const response = this.play.take(toInput(message, this.seat), id);
    this.pass();
    if (response.kind === 'facts') this.tell({ t: 'ack', id, seq: this.sent - 1 });
    else this.tell({ t: 'refused', id, reason: response.reason, text: response.text });
  }

  protected welcome(after: number): void {
    this.sent = after + 1;
    this.greet(this.play.head, this.seat);
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
