import { nanoid } from 'nanoid';
import { WebSocket } from 'ws';
import { Connection, type Socket } from '../../client/link/connection.ts';
import { SOCKET_PATH } from '../../src/protocol/socket.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';

/** A phone without a screen: the same link to the server as the real one, and the same fold. */
export class Phone {
  readonly #connection: Connection;
  #state: JobState = EMPTY;
  #folded = 0;

  constructor(origin: string, token: string) {
    this.#connection = new Connection(token, {
      open: () => new WebSocket(origin.replace(/^http/, 'ws') + SOCKET_PATH, { origin }) as unknown as Socket,
      now: () => Date.now(),
      every: (ms, call) => {
        const timer = setInterval(call, ms);
        return () => clearInterval(timer);
      },
      outbox: { load: () => [], save: () => true },
    });
    this.#connection.start();
  }

  get state(): JobState {
    const { entries } = this.#connection.link;
    for (; this.#folded < entries.length; this.#folded++) {
      const entry = entries[this.#folded];
      if (entry) this.#state = fold(this.#state, entry);
    }
    return this.#state;
  }

  get entries() {
    return this.#connection.link.entries;
  }

  /** Calls back whenever there are new entries. */
  onChange(call: () => void): void {
    let seen = 0;
    this.#connection.subscribe(() => {
      const { length } = this.#connection.link.entries;
      if (length === seen || this.#connection.link.phase !== 'live') return;
      seen = length;
      call();
    });
  }

  say(text: string): void {
    const re = this.state.instruction?.seq;
    const letter = { t: 'say', id: nanoid(), via: 'typed', text, ...(re !== undefined && { re }) } as const;
    this.#connection.feed({ on: 'post', letter });
  }

  hangUp(): void {
    this.#connection.stop();
  }
}
