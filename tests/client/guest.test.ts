import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { hostGuest } from '../../client/here/guest.ts';
import type { RoomHere } from '../../client/here/room-here.ts';
import { emptyHead } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { DEAD_AFTER_MS, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';

const TOKEN = 'A'.repeat(22);
const HELLO = { t: 'hello', v: PROTOCOL_VERSION, token: TOKEN, after: -1 };

/** The end of a channel between two phones, as far as the panel's phone uses it (RFC 8831: messages in order, each once). */
class Channel {
  readyState = 'open';
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onclose: (() => void) | null = null;
  readonly sent: Record<string, unknown>[] = [];
  send(data: string) {
    this.sent.push(JSON.parse(data));
  }
  close() {
    this.readyState = 'closed';
  }
  async comes(message: unknown) {
    this.onmessage?.({ data: typeof message === 'string' ? message : JSON.stringify(message) });
    await vi.advanceTimersByTimeAsync(0);
  }
  get kinds() {
    return this.sent.map(({ t }) => t);
  }
}

describe("the phone that the panel's phone has met", () => {
  let channel: Channel;
  let room: Record<'enter' | 'leave' | 'submit' | 'received', ReturnType<typeof vi.fn>>;
  const entries = Array.from({ length: 45 }, (_, seq) => ({ seq }) as Entry);

  beforeEach(async () => {
    vi.useFakeTimers();
    channel = new Channel();
    room = {
      enter: vi.fn(),
      leave: vi.fn(),
      submit: vi.fn(async () => ({ kind: 'taken', seq: 45 })),
      received: vi.fn(),
    };
    const head = { ...emptyHead('kept-on-phone'), count: entries.length };
    const presence = () => ({ panel: 'online', emitter: 'away', watchers: 0 });
    hostGuest(
      { ...room, head, entries, presence } as unknown as RoomHere,
      channel as unknown as RTCDataChannel,
    );
    await vi.advanceTimersByTimeAsync(0);
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('R140: is given all that is in the log, in frames that a channel takes, and then is in the room', async () => {
    await channel.comes(HELLO);
    expect(channel.kinds).toEqual(['welcome', 'presence', 'entries', 'entries', 'entries', 'caught-up']);
    const seqs = channel.sent
      .flatMap((each) => (each.entries as Entry[] | undefined) ?? [])
      .map(({ seq }) => seq);
    expect(seqs).toEqual(entries.map(({ seq }) => seq));
    expect(channel.sent[0]).toMatchObject({ role: 'emitter', job: 'kept-on-phone' });
    expect(room.enter).toHaveBeenCalledOnce();
  });

  it('R140: what it says comes from the emitter, under its own id', async () => {
    await channel.comes(HELLO);
    await channel.comes({ t: 'say', id: 'abcdefghijklmnopqrstu', via: 'button', text: 'done', re: 7 });
    expect(room.submit).toHaveBeenCalledWith(
      expect.objectContaining({ kind: 'words', seat: 'emitter', text: 'done', re: 7 }),
      'abcdefghijklmnopqrstu',
    );
    expect(channel.sent.at(-1)).toEqual({ t: 'ack', id: 'abcdefghijklmnopqrstu', seq: 45 });
  });

  it.each([
    ['no JSON', 'done', 'bad-message'],
    ['no message of the protocol', { t: 'shout', id: 'abcdefghijklmnopqrstu' }, 'bad-message'],
    ['an unseen character', { t: 'remark', id: 'abcdefghijklmnopqrstu', text: 'a\u202eb' }, 'bad-message'],
    ['a text too long', { t: 'remark', id: 'abcdefghijklmnopqrstu', text: 'a'.repeat(2_001) }, 'too-long'],
    ['a page of another version', { ...HELLO, v: PROTOCOL_VERSION + 1 }, 'version'],
    ['more than the log has', { ...HELLO, after: 45 }, 'from-the-future'],
  ])('R144: is refused %s, and nothing is taken', async (_, message, reason) => {
    await channel.comes(message);
    expect(channel.sent.at(-1)).toMatchObject({ t: 'refused', reason });
    expect(room.submit).not.toHaveBeenCalled();
    expect(room.enter).not.toHaveBeenCalled();
  });

  it('R141: is gone after six seconds of silence, not before, and not while it says anything', async () => {
    await channel.comes(HELLO);
    for (let n = 0; n < 4; n += 1) {
      await vi.advanceTimersByTimeAsync(DEAD_AFTER_MS - 1_000);
      await channel.comes({ t: 'ping', n });
    }
    expect(room.leave).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(DEAD_AFTER_MS);
    expect(room.leave).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(2_000);
    expect(room.leave).toHaveBeenCalledOnce();
    expect(channel.readyState).toBe('closed');
  });

  it('R141: is not called gone because this page stood still', async () => {
    await channel.comes(HELLO);
    // A phone that sleeps stops a page; its timers come late, all at once.
    vi.setSystemTime(Date.now() + 60_000);
    await vi.advanceTimersByTimeAsync(2_000);
    expect(room.leave).not.toHaveBeenCalled();
  });

  it('R141: leaves when its channel closes', async () => {
    await channel.comes(HELLO);
    channel.onclose?.();
    expect(room.leave).toHaveBeenCalledOnce();
  });
});
