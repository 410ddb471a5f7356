import { type Report, toInput } from '../../src/conversation/inputs.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { NOT_WITHOUT_SERVER } from '../../src/phrases/kept-here.ts';
import { logEndsText } from '../../src/phrases/log-failures.ts';
import type { Receipt } from '../../src/protocol/socket.ts';
import type { Socket } from '../link/connection.ts';
import { PageSocket } from '../link/page-socket.ts';
import { roomOf } from './open-rooms.ts';
import type { Member, RoomHere } from './room-here.ts';

/** So many entries go in one frame: a channel between two phones takes no larger ones. */
const ENTRIES_AT_ONCE = 20;

/** A way to the room of a job that this phone keeps. */
export const openHere = (job: string) => (): Socket => new SocketHere(roomOf(job), 'panel');

/** A connection to such a room: of this page, or of the phone that this one has met. */
export class SocketHere extends PageSocket implements Member {
  protected readonly alone = { reason: 'not-now', text: NOT_WITHOUT_SERVER } as const;
  private room: RoomHere | undefined;

  constructor(
    loading: Promise<RoomHere>,
    readonly seat: Seat,
  ) {
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
    this.room?.leave(this);
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

  protected override received(receipt: Receipt): void {
    if (this.seat === 'emitter') this.room?.received(receipt);
  }

  private async submit(room: RoomHere, message: Report): Promise<void> {
    const { id } = message;
    const outcome = await room.submit(toInput(message, this.seat), id);
    if (outcome.kind === 'taken') this.tell({ t: 'ack', id, seq: outcome.seq });
    else this.tell({ t: 'refused', id, reason: outcome.reason, text: outcome.text });
  }

  protected welcome(after: number): void {
    const { room } = this;
    if (!room) return;
    const { head, entries } = room;
    if (after >= head.count) {
      this.tell({ t: 'refused', reason: 'from-the-future', text: logEndsText(after, head.count) });
      return;
    }
    this.greet(head, this.seat, room.presence());
    this.give(entries.slice(after + 1));
    this.tell({ t: 'caught-up', seq: head.count - 1 });
    room.enter(this);
  }

  give(entries: readonly Entry[]): void {
    for (let from = 0; from < entries.length; from += ENTRIES_AT_ONCE)
      this.tell({ t: 'entries', entries: entries.slice(from, from + ENTRIES_AT_ONCE) });
  }
}
