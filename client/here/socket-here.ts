import { toInput } from '../../src/conversation/inputs.ts';
import type { Entry } from '../../src/model/entry.ts';
import { NOT_WITHOUT_SERVER } from '../../src/phrases/brought.ts';
import { type ClientMessage, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
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

  protected take(message: ClientMessage): void {
    const { room } = this;
    if (!room) return;
    switch (message.t) {
      case 'hello':
        this.welcome(room, message.after);
        return;
      case 'ping':
        this.tell({ t: 'pong', n: message.n, now: Date.now() });
        return;
      case 'invite':
      case 'admit':
      case 'sound':
        this.tell({ t: 'refused', id: message.id, reason: 'not-now', text: NOT_WITHOUT_SERVER });
        return;
      // There is no other phone to tell, and no server that hears.
      case 'receipt':
      case 'talk':
      case 'read':
      case 'talk-end':
      case 'talk-drop':
        return;
      default:
        void this.submit(room, message);
    }
  }

  private async submit(room: RoomHere, message: Parameters<typeof toInput>[0]): Promise<void> {
    const { id } = message;
    const outcome = await room.submit(toInput(message, SEAT), id);
    if (outcome.kind === 'taken') this.tell({ t: 'ack', id, seq: outcome.seq });
    else this.tell({ t: 'refused', id, reason: outcome.reason, text: outcome.text });
  }

  private welcome(room: RoomHere, after: number): void {
    const { head, entries } = room;
    const speech = { name: '', ready: false };
    const presence = { panel: 'online', emitter: 'online', watchers: 0 } as const;
    this.tell({
      t: 'welcome',
      v: PROTOCOL_VERSION,
      role: SEAT,
      job: head.job,
      head,
      now: Date.now(),
      speech,
    });
    this.tell({ t: 'presence', presence });
    this.give(entries.slice(after + 1));
    this.tell({ t: 'caught-up', seq: head.count - 1 });
    room.onEntries = (added) => this.give(added);
    void room.submit({ kind: 'tick' });
  }

  private give(entries: readonly Entry[]): void {
    if (entries.length > 0) this.tell({ t: 'entries', entries: [...entries] });
  }
}
