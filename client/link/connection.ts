import type { Entry } from '../../src/model/entry.ts';
import type { MessageId } from '../../src/model/ids.ts';
import type { ClientMessage } from '../../src/protocol/socket.ts';
import { decode } from './codec.ts';
import { type Effect, type Link, type LinkEvent, newLink, step } from './link.ts';
import type { Outbox } from './outbox.ts';

/** The part of a WebSocket that is used here. */
export interface Socket {
  onopen: (() => void) | null;
  onclose: (() => void) | null;
  onmessage: ((event: { data: unknown }) => void) | null;
  send(data: string | ArrayBufferView<ArrayBuffer>): void;
  close(): void;
}

/** What a connection needs from outside. */
export interface World {
  open(): Socket;
  /** This phone's clock, ms. */
  now(): number;
  /** Calls back every `ms`, until the returned function is called. */
  every(ms: number, call: () => void): () => void;
  outbox: Outbox;
  /** The part of the log that is already known. Only later entries are requested. */
  known?: readonly Entry[];
  /** Of a watcher who gave one. */
  name?: string | undefined;
}

const TICK_MS = 250;

/**
 * One utterance being sent. It belongs to the socket it began on: on another one the server does not have its
 * start.
 */
export interface Talk {
  readonly id: MessageId;
  /** False: the socket is closed. The utterance is lost and must be said again. */
  sound(pcm: Int16Array<ArrayBuffer>): boolean;
  end(): boolean;
  drop(): void;
}

/** The message that begins one. */
export type Opening = Extract<ClientMessage, { t: 'talk' | 'read' }>;

/** Runs a `Link` on a real socket, clock and storage. */
export class Connection {
  #link: Link;
  #socket: Socket | undefined;
  #stopTicking: (() => void) | undefined;
  readonly #listeners = new Set<() => void>();

  constructor(
    token: string,
    private readonly world: World,
  ) {
    this.#link = newLink(token, world.outbox.load(), world.known, world.name);
  }

  get link(): Link {
    return this.#link;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  start(): void {
    this.#stopTicking ??= this.world.every(TICK_MS, () => this.feed({ on: 'tick' }));
    this.feed({ on: 'start' });
  }

  stop(): void {
    this.#stopTicking?.();
    this.#stopTicking = undefined;
    this.feed({ on: 'stop' });
  }

  feed(event: LinkEvent): void {
    const before = this.#link;
    const { link, effects } = step(before, event, this.world.now());
    this.#link = link;
    // Kept before it is sent: after a crash in between it is sent twice, but never lost.
    if (link.outbox !== before.outbox) this.world.outbox.save(link.outbox);
    for (const effect of effects) this.#run(effect);
    if (shows(before, link)) for (const listener of this.#listeners) listener();
  }

  /** Opens an utterance. Undefined: there is no live link. */
  talk(opening: Opening): Talk | undefined {
    const { id } = opening;
    const { conn, phase } = this.#link;
    const socket = this.#socket;
    if (phase !== 'live' || !socket) return undefined;
    const alive = () => this.#link.conn === conn && this.#link.phase === 'live';
    const send = (message: ClientMessage) => {
      if (alive()) socket.send(JSON.stringify(message));
      return alive();
    };
    send(opening);
    return {
      id,
      sound(pcm) {
        if (alive()) socket.send(pcm);
        return alive();
      },
      end: () => send({ t: 'talk-end', id }),
      drop: () => void send({ t: 'talk-drop', id }),
    };
  }

  #run(effect: Effect): void {
    switch (effect.do) {
      case 'open':
        this.#open(effect.conn);
        return;
      case 'close':
        this.#socket?.close();
        this.#socket = undefined;
        return;
      case 'send':
        this.#socket?.send(JSON.stringify(effect.message));
    }
  }

  #open(conn: number): void {
    const socket = this.world.open();
    this.#socket = socket;
    socket.onopen = () => this.feed({ on: 'opened', conn });
    socket.onclose = () => this.feed({ on: 'closed', conn });
    socket.onmessage = ({ data }) => {
      if (typeof data !== 'string') return;
      const decoded = decode(data);
      if (decoded.kind === 'message') this.feed({ on: 'frame', conn, message: decoded.message });
      if (decoded.kind === 'unreadable') this.feed({ on: 'unreadable', conn });
    };
  }
}

/** Whether anything visible changed. Pings change the link too, and must not redraw the screen. */
const shows = (a: Link, b: Link): boolean =>
  a.phase !== b.phase ||
  a.entries !== b.entries ||
  a.historyEnd !== b.historyEnd ||
  a.outbox !== b.outbox ||
  a.complaints !== b.complaints ||
  a.presence !== b.presence ||
  a.receipt !== b.receipt ||
  a.speech !== b.speech ||
  a.serverStops !== b.serverStops ||
  a.hearing !== b.hearing ||
  a.learnt !== b.learnt ||
  a.invites !== b.invites ||
  a.offset !== b.offset;
