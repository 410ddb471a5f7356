import { describe, expect, it } from 'vitest';
import {
  CONNECT_TIMEOUT_MS,
  PROBE_MS,
  REFUSED_PAUSE_MS,
  RESEND_AFTER_MS,
  serverNow,
} from '../../client/link/link.ts';
import { DEAD_AFTER_MS, PING_EVERY_MS, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { logOf, opened, remark, TOKEN } from './fixtures.ts';
import { LinkRig, refused, say, TICK, welcome } from './link-rig.ts';

describe('the link to the server', () => {
  it('opens a socket, says hello with nothing held, and is live only once caught up', () => {
    const rig = new LinkRig().do({ on: 'start' });
    expect(rig.effects).toEqual([{ do: 'open', conn: 1 }]);
    rig.do({ on: 'opened', conn: 1 });
    expect(rig.sent()).toEqual([{ t: 'hello', v: PROTOCOL_VERSION, token: TOKEN, after: -1 }]);
    rig.hear(welcome(rig.now)).hear({ t: 'entries', entries: logOf([opened]) });
    expect(rig.link.phase).toBe('catching-up');
    rig.hear({ t: 'caught-up', seq: 0 });
    expect(rig.link.phase).toBe('live');
    expect(rig.link.historyEnd).toBe(0);
  });

  it('resumes after a drop from the last entry it holds and misses nothing', () => {
    const log = logOf([opened, remark('one'), remark('two'), remark('three')]);
    const rig = new LinkRig().goLive(log.slice(0, 2));
    rig.do({ on: 'closed', conn: 1 });
    rig.pass(500);
    expect(rig.link.phase).toBe('connecting');
    rig.do({ on: 'opened', conn: 2 });
    expect(rig.sent()).toContainEqual({ t: 'hello', v: PROTOCOL_VERSION, token: TOKEN, after: 1 });
    rig.hear({ t: 'entries', entries: log.slice(2) }).hear({ t: 'caught-up', seq: 3 });
    expect(rig.link.entries).toEqual(log);
  });

  it('takes an entry that comes twice only once', () => {
    const log = logOf([opened, remark('one')]);
    const rig = new LinkRig().goLive(log);
    rig.hear({ t: 'entries', entries: log });
    expect(rig.link.entries).toEqual(log);
  });

  it('does not trust a socket on which an entry is missing, and asks again from the last good one', () => {
    const log = logOf([opened, remark('one'), remark('two')]);
    const rig = new LinkRig().goLive(log.slice(0, 1));
    rig.hear({ t: 'entries', entries: log.slice(2) });
    expect(rig.effects).toEqual([{ do: 'close', conn: 1 }]);
    expect(rig.link.entries).toEqual(log.slice(0, 1));
  });

  it('ignores whatever a replaced socket still says', () => {
    const rig = new LinkRig().goLive();
    rig.do({ on: 'closed', conn: 1 });
    rig.pass(500);
    rig.do({
      on: 'frame',
      conn: 1,
      message: { t: 'entries', entries: logOf([opened, remark('late')]).slice(1) },
    });
    rig.do({ on: 'closed', conn: 1 });
    expect(rig.link.entries).toHaveLength(1);
    expect(rig.link.phase).toBe('connecting');
  });

  it('gives up a connection attempt after a few seconds and tries again', () => {
    const rig = new LinkRig().do({ on: 'start' });
    const done = rig.pass(CONNECT_TIMEOUT_MS + 1_000);
    expect(done).toEqual([
      { do: 'close', conn: 1 },
      { do: 'open', conn: 2 },
    ]);
  });

  it('backs off while attempts fail, but never for long on a phone in the hand', () => {
    const rig = new LinkRig().do({ on: 'start' });
    const waits: number[] = [];
    for (let i = 0; i < 8; i++) {
      rig.do({ on: 'closed', conn: rig.link.conn });
      waits.push(rig.link.retryAt - rig.now);
      rig.pass(rig.link.retryAt - rig.now);
      expect(rig.link.phase).toBe('connecting');
    }
    expect(waits).toEqual([...waits].sort((a, b) => a - b));
    expect(Math.max(...waits)).toBeLessThanOrEqual(4_000);
  });

  it('tries at once when the phone is looked at again or the network is said to be back', () => {
    for (const event of [{ on: 'visible', visible: true } as const, { on: 'online' } as const]) {
      const rig = new LinkRig().goLive().do({ on: 'visible', visible: false });
      rig.do({ on: 'closed', conn: 1 });
      expect(rig.link.retryAt - rig.now).toBeGreaterThan(10_000);
      expect(rig.do(event).effects).toEqual([{ do: 'open', conn: 2 }]);
    }
  });
});

describe('a socket that is open and dead', () => {
  it('is noticed within the time the protocol gives, though nothing was ever closed', () => {
    const rig = new LinkRig().goLive();
    const done = rig.pass(DEAD_AFTER_MS);
    expect(rig.sent(done).some((m) => m.t === 'ping')).toBe(true);
    expect(done.at(-1)).toEqual({ do: 'close', conn: 1 });
  });

  it('is kept as long as pings are answered', () => {
    const rig = new LinkRig().goLive();
    for (let i = 0; i < 20; i++) {
      for (const m of rig.sent(rig.pass(PING_EVERY_MS))) {
        if (m.t === 'ping') rig.hear({ t: 'pong', n: m.n, now: rig.now });
      }
    }
    expect(rig.link.phase).toBe('live');
    expect(rig.link.conn).toBe(1);
  });

  it('is asked for a sign of life when the phone wakes, and given up soon if none comes', () => {
    const rig = new LinkRig().goLive();
    rig.now += 60_000; // asleep: no timer ran
    rig.do({ on: 'visible', visible: true });
    expect(rig.sent()).toEqual([{ t: 'ping', n: 1 }]);
    expect(rig.pass(PROBE_MS).at(-1)).toEqual({ do: 'close', conn: 1 });
  });

  it('is not condemned for silence while the timers were frozen', () => {
    const rig = new LinkRig().goLive();
    rig.now += 60_000;
    rig.do({ on: 'tick' });
    expect(rig.link.phase).toBe('live');
    rig.hear({ t: 'pong', n: 1, now: rig.now });
    rig.pass(PING_EVERY_MS);
    expect(rig.link.phase).toBe('live');
  });
});

describe('the outbox', () => {
  it('holds what is written without a link, and sends it in order once live', () => {
    const rig = new LinkRig()
      .do({ on: 'post', letter: say('first-one') })
      .do({ on: 'post', letter: say('second-one') });
    expect(rig.effects).toEqual([]);
    rig.goLive();
    expect(rig.sent()).toEqual([say('first-one'), say('second-one')]);
    expect(rig.link.outbox).toHaveLength(2);
  });

  it('sends at once on a live link, and lets go of it only when acknowledged', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
    expect(rig.sent()).toEqual([say('reading-1')]);
    expect(rig.link.outbox).toHaveLength(1);
    rig.hear({ t: 'ack', id: 'reading-1', seq: 1 });
    expect(rig.link.outbox).toEqual([]);
  });

  it('sends again after a drop what was not acknowledged, with the same id', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
    rig.do({ on: 'closed', conn: 1 });
    rig.pass(500);
    rig.goLive();
    expect(rig.sent()).toEqual([say('reading-1')]);
  });

  it('does not send again what the record shows to have arrived', () => {
    const log = logOf([opened, remark('on the log', 'reading-1')]);
    const rig = new LinkRig().goLive(log.slice(0, 1)).do({ on: 'post', letter: say('reading-1') });
    rig.do({ on: 'closed', conn: 1 });
    rig.pass(500);
    rig.goLive(log);
    expect(rig.sent()).toEqual([]);
    expect(rig.link.outbox).toEqual([]);
  });

  it('takes a second acknowledgement of the same message without harm', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
    rig.hear({ t: 'ack', id: 'reading-1', seq: 1 }).hear({ t: 'ack', id: 'reading-1', seq: 1 });
    expect(rig.link.outbox).toEqual([]);
  });

  it('sends again on a living link when no acknowledgement comes', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
    const again: number[] = [];
    for (let ms = 0; ms < RESEND_AFTER_MS + 1_000; ms += TICK) {
      for (const m of rig.sent(rig.pass(TICK))) {
        if (m.t === 'ping') rig.hear({ t: 'pong', n: m.n, now: rig.now });
        if (m.t === 'say') again.push(ms);
      }
    }
    expect(again).toHaveLength(1);
  });

  it.each(['too-fast', 'store-failed'] as const)(
    'keeps a message refused as %s and tries again later',
    (reason) => {
      const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1') });
      rig.hear(refused(reason, 'reading-1'));
      expect(rig.link.outbox).toHaveLength(1);
      expect(rig.link.complaints).toHaveLength(1);
      expect(rig.sent(rig.pass(REFUSED_PAUSE_MS))).toContainEqual(say('reading-1'));
    },
  );

  it('drops a message refused for good, and says so with the message itself', () => {
    const rig = new LinkRig().goLive().do({ on: 'post', letter: say('reading-1', 'xyz') });
    rig.hear(refused('bad-target', 'reading-1'));
    expect(rig.link.outbox).toEqual([]);
    expect(rig.link.complaints[0]?.letter).toEqual(say('reading-1', 'xyz'));
    rig.do({ on: 'dismiss', complaint: rig.link.complaints[0] as (typeof rig.link.complaints)[0] });
    expect(rig.link.complaints).toEqual([]);
  });
});

describe('what trying again cannot mend', () => {
  it.each(['bad-token', 'version', 'seat-lost', 'replaced', 'from-the-future'] as const)(
    '%s ends the link',
    (reason) => {
      const rig = new LinkRig().goLive().hear(refused(reason));
      expect(rig.link.ended?.reason).toBe(reason);
      expect(rig.pass(60_000)).toEqual([]);
      expect(rig.do({ on: 'online' }).effects).toEqual([]);
    },
  );

  it('a frame that cannot be read ends the link rather than losing an entry unseen', () => {
    const rig = new LinkRig().goLive().do({ on: 'unreadable', conn: 1 });
    expect(rig.link.ended?.text).toMatch(/Load the page again/);
  });
});

describe("the server's clock", () => {
  it('is taken from the middle of the quickest round trip', () => {
    const rig = new LinkRig().goLive();
    const AHEAD = 5_000;
    rig.pass(PING_EVERY_MS);
    const sentAt = rig.now;
    rig.now += 100;
    rig.hear({ t: 'pong', n: 1, now: sentAt + 50 + AHEAD });
    expect(serverNow(rig.link, rig.now) - rig.now).toBe(AHEAD);
    rig.pass(PING_EVERY_MS);
    const slow = rig.now;
    rig.now += 3_000;
    rig.hear({ t: 'pong', n: 2, now: slow + AHEAD });
    expect(serverNow(rig.link, rig.now) - rig.now).toBe(AHEAD);
  });
});
