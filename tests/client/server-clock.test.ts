import { describe, expect, it } from 'vitest';
import { serverNow } from '../../client/link/link.ts';
import { LinkRig, welcome } from './link-rig.ts';

describe('the offset of the server’s clock', () => {
  const aheadOf = (rig: LinkRig) => serverNow(rig.link, rig.now) - rig.now;
  /** A pong to the newest ping after `trip` ms, whose server clock is so far ahead in the middle of it. */
  const answered = (rig: LinkRig, trip: number, ahead: number): LinkRig => {
    rig.do({ on: 'online' });
    const sentAt = rig.now;
    rig.now += trip;
    const n = rig.link.pings.at(-1)?.n as number;
    return rig.hear({ t: 'pong', n, now: sentAt + trip / 2 + ahead });
  };

  it('is none before the server spoke, and first that of its welcome', () => {
    const rig = new LinkRig().do({ on: 'start' });
    expect(aheadOf(rig)).toBe(0);
    rig.do({ on: 'opened', conn: 1 });
    rig.hear(welcome(rig.now + 3_000));
    expect(aheadOf(rig)).toBe(3_000);
  });

  it.each<[string, number, number]>([
    ['is the newer one where the trip was quicker', 99, 9_000],
    ['is the newer one where the trip was as quick', 100, 9_000],
    ['stays where the trip was slower', 101, 5_000],
  ])('%s', (_, trip, ahead) => {
    const rig = answered(new LinkRig().goLive(), 100, 5_000);
    expect(aheadOf(rig)).toBe(5_000);
    expect(aheadOf(answered(rig, trip, 9_000))).toBe(ahead);
  });

  it('ages: each slower trip lets one a tenth and a millisecond slower count', () => {
    const rig = answered(new LinkRig().goLive(), 100, 5_000);
    answered(rig, 500, 9_000);
    // 100 ms and a tenth and a millisecond: 111 ms count from now on.
    answered(rig, 112, 9_000);
    expect(aheadOf(rig)).toBe(5_000);
    // 111 ms and a tenth and a millisecond: 123.1 ms.
    answered(rig, 123, 9_000);
    expect(aheadOf(rig)).toBe(9_000);
  });

  it('is taken restartedAt on a new socket, however slow', () => {
    const rig = answered(new LinkRig().goLive(), 100, 5_000);
    rig.do({ on: 'closed', conn: 1 });
    rig.beatAfter(250);
    rig.do({ on: 'opened', conn: 2 });
    answered(rig, 500, 9_000);
    expect(aheadOf(rig)).toBe(9_000);
  });

  it('is not taken from a pong to no ping of ours, nor from one already answered', () => {
    const rig = answered(new LinkRig().goLive(), 100, 5_000);
    rig.do({ on: 'online' }).hear({ t: 'pong', n: 99, now: rig.now + 9_000 });
    expect(aheadOf(rig)).toBe(5_000);
    const quick = answered(rig, 2, 5_000);
    quick.hear({ t: 'pong', n: 1, now: rig.now + 9_000 });
    expect(aheadOf(rig)).toBe(5_000);
  });

  it('is taken from a late pong, too, of the last four pings', () => {
    const rig = new LinkRig().goLive();
    for (let i = 0; i < 5; i++) {
      rig.now += 100;
      rig.do({ on: 'online' });
    }
    expect(rig.link.pings.map(({ n }) => n)).toEqual([2, 3, 4, 5]);
    // It was sent 200 ms ago, and the middle of its trip lies 100 ms back.
    rig.hear({ t: 'pong', n: 3, now: rig.now - 100 + 7_000 });
    expect(aheadOf(rig)).toBe(7_000);
    expect(rig.link.pings.map(({ n }) => n)).toEqual([4, 5]);
  });

  it('and its pings are counted restartedAt on a new socket', () => {
    const rig = new LinkRig().goLive().do({ on: 'online' });
    expect(rig.link.pings).toHaveLength(1);
    rig.do({ on: 'closed', conn: 1 });
    rig.beatAfter(250);
    expect(rig.link.pings).toEqual([]);
  });
});
