import { describe, expect, it } from 'vitest';
import { memoryStorage, type Storage } from '../../client/browser/storage.ts';
import { Connection, type Socket } from '../../client/link/connection.ts';
import { outboxIn } from '../../client/link/outbox.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { ServerMessage } from '../../src/protocol/socket.ts';
import { logOf, opened, TOKEN } from './fixtures.ts';

/** A socket in memory. Frames move only when the test moves them. */
class FakeSocket implements Socket {
  onopen: (() => void) | null = null;
  onclose: (() => void) | null = null;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  readonly texts: unknown[] = [];
  readonly sounds: Int16Array[] = [];
  closed = false;

  send(data: string | ArrayBufferView<ArrayBuffer>): void {
    if (typeof data === 'string') this.texts.push(JSON.parse(data));
    else this.sounds.push(data as Int16Array);
  }
  close(): void {
    this.closed = true;
  }
  hear(message: ServerMessage): void {
    this.onmessage?.({ data: JSON.stringify(message) });
  }
  goLive(): void {
    this.onopen?.();
    this.hear({ t: 'entries', entries: logOf([opened]) });
    this.hear({ t: 'caught-up', seq: 0 });
  }
}

function phone(storage: Storage = memoryStorage(), known?: readonly Entry[]) {
  const sockets: FakeSocket[] = [];
  let now = 0;
  let beat: (() => void) | undefined;
  const connection = new Connection(TOKEN, {
    open: () => {
      const socket = new FakeSocket();
      sockets.push(socket);
      return socket;
    },
    now: () => now,
    every: (_, call) => {
      beat = call;
      return () => {
        beat = undefined;
      };
    },
    outbox: outboxIn(storage, 'outbox.test'),
    ...(known && { known }),
  });
  const pass = (ms: number) => {
    for (const end = now + ms; now < end; ) {
      now += 250;
      beat?.();
    }
  };
  return { connection, sockets, pass, beating: () => beat !== undefined };
}

const LETTER = { t: 'say', id: 'reading-1', via: 'typed', text: '142' } as const;

describe('a connection', () => {
  it('after the page is loaded again, still sends what was written before', () => {
    const storage = memoryStorage();
    const before = phone(storage);
    before.connection.start();
    before.connection.feed({ on: 'post', letter: LETTER });

    const after = phone(storage);
    after.connection.start();
    after.sockets[0]?.goLive();
    expect(after.sockets[0]?.texts).toContainEqual(LETTER);
    after.sockets[0]?.hear({ t: 'ack', id: LETTER.id, seq: 1 });

    expect(phone(storage).connection.link.outbox).toEqual([]);
  });

  it('starts with an empty outbox when what was kept is not an outbox', () => {
    const storage = memoryStorage();
    storage.write('outbox.test', [{ letter: { t: 'ping', n: 1 }, since: 0 }]);
    expect(phone(storage).connection.link.outbox).toEqual([]);
  });

  it('closes the old socket when it opens another, and no longer listens to it', () => {
    const { connection, sockets, pass } = phone();
    connection.start();
    sockets[0]?.goLive();
    pass(7_000);
    expect(sockets).toHaveLength(2);
    expect(sockets[0]?.closed).toBe(true);
    sockets[0]?.hear({ t: 'speech', speech: { name: 'old', ready: true } });
    expect(connection.link.speech).toBeUndefined();
  });

  it('ignores a kind of frame it does not know, and stops at one it cannot read', () => {
    const { connection, sockets } = phone();
    connection.start();
    sockets[0]?.goLive();
    sockets[0]?.onmessage?.({ data: '{"t":"from-a-newer-server"}' });
    expect(connection.link.phase).toBe('live');
    sockets[0]?.onmessage?.({ data: '{"t":"entries","entries":[{"seq":"one"}]}' });
    expect(connection.link.ended?.reason).toBe('version');
  });

  it('asks only for entries after the log it was given', () => {
    const { connection, sockets } = phone(memoryStorage(), logOf([opened]));
    connection.start();
    sockets[0]?.onopen?.();
    expect(sockets[0]?.texts).toMatchObject([{ t: 'hello', after: 0 }]);
    expect(connection.link.entries).toHaveLength(1);
  });

  it('calls its listeners when there is something new to see, not at every ping', () => {
    const { connection, sockets, pass } = phone();
    connection.start();
    sockets[0]?.goLive();
    let told = 0;
    connection.subscribe(() => told++);
    pass(4_000);
    expect(told).toBe(0);
    sockets[0]?.hear({ t: 'presence', presence: { panel: 'online', emitter: 'empty', watchers: 0 } });
    expect(told).toBe(1);
  });

  it('stops its timer when it is stopped', () => {
    const { connection, beating } = phone();
    connection.start();
    connection.stop();
    expect(beating()).toBe(false);
  });
});

describe('an utterance', () => {
  it('goes out as talk, sound, talk-end on one socket', () => {
    const { connection, sockets } = phone();
    connection.start();
    sockets[0]?.goLive();
    const talk = connection.talk({ t: 'talk', id: 'talk-0001', re: 7 });
    expect(talk?.sound(Int16Array.from([1, 2, 3]))).toBe(true);
    talk?.end();
    expect(sockets[0]?.texts.slice(-2)).toEqual([
      { t: 'talk', id: 'talk-0001', re: 7 },
      { t: 'talk-end', id: 'talk-0001' },
    ]);
    expect(sockets[0]?.sounds).toHaveLength(1);
  });

  it('does not start without a live link', () => {
    const { connection } = phone();
    connection.start();
    expect(connection.talk({ t: 'talk', id: 'talk-0001' })).toBeUndefined();
  });

  it('never goes on over another socket than the one it started on', () => {
    const { connection, sockets, pass } = phone();
    connection.start();
    sockets[0]?.goLive();
    const talk = connection.talk({ t: 'talk', id: 'talk-0001' });
    sockets[0]?.onclose?.();
    pass(500);
    sockets[1]?.goLive();
    expect(talk?.sound(Int16Array.from([1]))).toBe(false);
    expect(talk?.end()).toBe(false);
    expect(sockets[1]?.sounds).toEqual([]);
    expect(sockets[1]?.texts.map((m) => (m as { t: string }).t)).toEqual(['hello']);
  });
});
