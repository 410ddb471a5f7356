import { type Report, toInput } from '../../src/conversation/inputs.ts';
import type { Entry } from '../../src/model/entry.ts';
import { NOT_WITHOUT_SERVER } from '../../src/phrases/brought.ts';
import type { Socket } from '../link/connection.ts';
import { PageSocket } from '../link/page-socket.ts';
import type { RoomHere } from './room-here.ts';

/** The one seat of a job that this phone keeps alone. */
const SEAT = 'panel';

/** A way to the room of a job that this phone keeps alone. The rules are fetched when it is first gone. */
export function openHere(job: string): () => Socket {
  let room: Promise<RoomHere> | undefined;
  return () => {
    room ??= import('./room-here.ts').then(({ RoomHere }) => RoomHere.load(job));
    const loading = room;
    // What failed may pass: the next try begins anew.
    loading.catch(() => {
      room = undefined;
    });
    return new SocketHere(loading);
  };
}

class SocketHere extends PageSocket {
  protected readonly alone = { reason: 'not-now', text: NOT_WITHOUT_SERVER } as const;
  private room: RoomHere | undefined;

  constructor(loading: Promise<RoomHere>) {
    super();
    loading.then(
      (room) => {
        this.room = room;
        this.onopen?.();
      },
      (error: unknown) => this.fail(error),
    );
  }

  override close(): void {
    super.close();
    if (!this.room) return;
    this.room.close();
    this.room.onEntries = () => {};
  }

  /** A record that is lost does not come back by another try, and its person must know. */
  private fail(error: unknown): void {
    if ((error as Error).name !== 'LostHere') {
      this.onclose?.();
      return;
    }
    this.onopen?.();
    this.tell({ t: 'refused', reason: 'from-the-future', text: (error as Error).message });
  }

  protected report(message: Report): void {
    const { id } = message;
    // It would have to lie beside the log.
    if (message.t === 'sound') this.tell({ t: 'refused', id, ...this.alone });
    else if (this.room) void this.submit(this.room, message);
  }

  private async submit(room: RoomHere, message: Report): Promise<void> {
    const { id } = message;
    const outcome = await room.submit(toInput(message, SEAT), id);
    if (outcome.kind === 'taken') this.tell({ t: 'ack', id, seq: outcome.seq });
    else this.tell({ t: 'refused', id, reason: outcome.reason, text: outcome.text });
  }

  protected welcome(after: number): void {
    const { room } = this;
    if (!room) return;
    const { head, entries } = room;
    this.greet(head, SEAT);
    this.give(entries.slice(after + 1));
    this.tell({ t: 'caught-up', seq: head.count - 1 });
    room.onEntries = (added) => this.give(added);
    void room.submit({ kind: 'tick' });
  }

  private give(entries: readonly Entry[]): void {
    if (entries.length > 0) this.tell({ t: 'entries', entries: [...entries] });
  }
}
