import { describe, expect, it } from 'vitest';
import { newLink } from '../../client/link/link.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { logOf, opened, remark, TOKEN } from './fixtures.ts';
import { LinkRig, refused, say } from './link-rig.ts';

const CLOSE = { do: 'close', conn: 1 };

describe('a letter', () => {
  const posted = () => new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
  /** Lets time pass on a socket that answers, and returns when the letter went out. */
  const sentWithin = (rig: LinkRig, ms: number): number[] => {
    const from = rig.now;
    const at: number[] = [];
    while (rig.now < from + ms) {
      for (const message of rig.sent(rig.beatAfter(250))) {
        if (message.t === 'ping') rig.hear({ t: 'pong', n: message.n, now: rig.now });
        else at.push(rig.now - from);
      }
    }
    return at;
  };

  it('that is not acknowledged is sent again every eight seconds', () => {
    expect(sentWithin(posted(), 17_000)).toEqual([8_000, 16_000]);
  });

  it.each<Refusal>(['too-fast', 'store-failed'])(
    'refused as %s is sent again after three seconds',
    (reason) => {
      const rig = posted().hear(refused(reason, 'reading-1'));
      expect(sentWithin(rig, 4_000)).toEqual([3_000]);
      expect(rig.link.outbox).toHaveLength(1);
    },
  );

  it('waits while history comes, and is sent when that is through', () => {
    const rig = new LinkRig().do({ on: 'start' }).do({ on: 'opened', conn: 1 });
    expect(rig.do({ on: 'post', letter: say('reading-1') }).effects).toEqual([]);
    expect(rig.hear({ t: 'caught-up', seq: -1 }).sent()).toEqual([say('reading-1')]);
    expect(rig.link.outbox).toMatchObject([{ since: rig.now }]);
  });

  it('kept from before the page was loaded is sent at once, whenever it was due then', () => {
    const rig = new LinkRig();
    rig.link = newLink(TOKEN, [{ letter: say('reading-1'), since: 5, dueAt: 99_999_999 }]);
    expect(rig.link.outbox).toEqual([{ letter: say('reading-1'), since: 5, dueAt: 0 }]);
    expect(rig.goLive().sent()).toEqual([say('reading-1')]);
  });

  it('goes out again on the next socket, though it was sent a moment ago on the last', () => {
    const rig = posted().do({ on: 'closed', conn: 1 });
    expect(rig.link.outbox).toMatchObject([{ dueAt: 0 }]);
    rig.beatAfter(250);
    expect(rig.goLive().sent()).toEqual([say('reading-1')]);
  });

  it('acknowledged is let go of, and no other', () => {
    const rig = posted().do({ on: 'post', letter: say('reading-2') });
    rig.hear({ t: 'ack', id: 'reading-1', seq: 1 });
    expect(rig.link.outbox.map(({ letter }) => letter.id)).toEqual(['reading-2']);
    expect(rig.link.invites).toEqual({});
    expect(rig.link.complaints).toEqual([]);
  });

  it('found in the log is let go of, and no other', () => {
    const rig = posted().do({ on: 'post', letter: say('reading-2') });
    const log = logOf([opened, remark('one', 'reading-1')]);
    rig.hear({ t: 'entries', entries: log.slice(1) });
    expect(rig.link.outbox.map(({ letter }) => letter.id)).toEqual(['reading-2']);
  });

  it('refused for good is let go of, and no other', () => {
    const rig = posted()
      .do({ on: 'post', letter: say('reading-2') })
      .hear(refused('bad-target', 'reading-1'));
    expect(rig.link.outbox.map(({ letter }) => letter.id)).toEqual(['reading-2']);
  });

  it('refused for now leaves the others due when they were', () => {
    const rig = posted().do({ on: 'post', letter: say('reading-2') });
    const [, second] = rig.link.outbox;
    rig.hear(refused('too-fast', 'reading-1'));
    expect(rig.link.outbox[1]).toEqual(second);
    expect(rig.link.outbox[0]?.dueAt).toBe(rig.now + 3_000);
  });

  it('that is due goes out alone, while another rests', () => {
    const rig = posted().hear(refused('too-fast', 'reading-1'));
    const [resting] = rig.link.outbox;
    expect(rig.do({ on: 'post', letter: say('reading-2') }).sent()).toEqual([say('reading-2')]);
    expect(rig.link.outbox[0]).toEqual(resting);
    expect(rig.link.outbox[1]?.dueAt).toBe(rig.now + 8_000);
  });

  it('that is not due leaves the outbox as it is: each change of it is written down', () => {
    const rig = posted();
    const { outbox } = rig.link;
    rig.beatAfter(250);
    expect(rig.link.outbox).toBe(outbox);
  });

  it('is not sent where there is no socket', () => {
    const rig = posted().do({ on: 'closed', conn: 1 });
    expect(rig.do({ on: 'post', letter: say('reading-2') }).effects).toEqual([]);
    expect(rig.link.outbox).toHaveLength(2);
  });
});

describe('a refusal', () => {
  it('is shown with the message and letter it is of', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
    rig.hear(refused('bad-target', 'reading-1'));
    const text = 'refused: bad-target';
    expect(rig.link.complaints).toEqual([
      { reason: 'bad-target', text, id: 'reading-1', letter: say('reading-1') },
    ]);
  });

  it('of no message is shown as that, and lets go of nothing', () => {
    const rig = new LinkRig()
      .goLive()
      .do({ on: 'post', letter: say('reading-1') })
      .hear(refused('too-fast'));
    expect(rig.link.complaints).toEqual([{ reason: 'too-fast', text: 'refused: too-fast' }]);
    expect(rig.link.outbox).toHaveLength(1);
    expect(rig.link.outbox[0]?.dueAt).toBe(rig.now + 8_000);
  });

  it('of sound, which is no letter, is shown by its id', () => {
    const rig = new LinkRig().goLive().hear(refused('too-fast', 'talk-0001'));
    expect(rig.link.complaints).toEqual([{ reason: 'too-fast', text: 'refused: too-fast', id: 'talk-0001' }]);
  });

  it('takes the place of an older one for the same reason, and of no other', () => {
    const rig = new LinkRig().goLive();
    rig.hear(refused('too-fast', 'talk-0001')).hear(refused('too-long', 'talk-0002'));
    rig.hear(refused('too-fast', 'talk-0003'));
    expect(rig.link.complaints.map(({ id }) => id)).toEqual(['talk-0002', 'talk-0003']);
    rig.do({ on: 'dismiss', complaint: rig.link.complaints[0] as (typeof rig.link.complaints)[0] });
    expect(rig.link.complaints.map(({ id }) => id)).toEqual(['talk-0003']);
  });

  it.each<[Refusal, boolean]>([
    ['bad-token', true],
    ['version', true],
    ['seat-lost', true],
    ['replaced', true],
    ['from-the-future', true],
    ['bad-message', false],
    ['store-failed', false],
    ['log-broken', false],
    ['seat-in-use', false],
  ])('as %s ends the link for good: %s', (reason, ends) => {
    const rig = new LinkRig().goLive().hear(refused(reason));
    expect(rig.link.phase).toBe(ends ? 'ended' : 'live');
    expect(rig.effects).toEqual(ends ? [CLOSE] : []);
    if (!ends) return;
    const letter = say('reading-1');
    for (const event of [
      { on: 'start' },
      { on: 'stop' },
      { on: 'visible', visible: true },
      { on: 'post', letter },
    ] as const) {
      expect(rig.do(event).effects).toEqual([]);
      expect(rig.link.phase).toBe('ended');
    }
    expect(rig.hear({ t: 'caught-up', seq: 0 }).link.phase).toBe('ended');
    expect(rig.do({ on: 'closed', conn: 1 }).link.phase).toBe('ended');
    const { complaints } = rig.link;
    expect(rig.do({ on: 'unreadable', conn: 1 }).effects).toEqual([]);
    expect(rig.link.complaints).toBe(complaints);
    expect(rig.link.ended?.reason).toBe(reason);
  });
});
