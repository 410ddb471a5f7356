import { describe, expect, it } from 'vitest';
import { LinkRig } from './link-rig.ts';

const CLOSE = { do: 'close', conn: 1 };

/** Lets so much time pass with a timer that beats every second at least. */
const beatsFor = (rig: LinkRig, ms: number) => {
  const end = rig.now + ms;
  const effects = [];
  while (rig.now < end) effects.push(...rig.beatAfter(Math.min(1_000, end - rig.now)));
  return effects;
};

describe('an attempt to connect', () => {
  it('is given up after five seconds, not before', () => {
    const rig = new LinkRig().do({ on: 'start' });
    expect(rig.beatAfter(4_999)).toEqual([]);
    expect(rig.beatAfter(1)).toEqual([CLOSE]);
  });

  it.each<[string, boolean, number[]]>([
    [
      'in the hand: longer each time, up to four seconds',
      true,
      [250, 500, 1_000, 2_000, 4_000, 4_000, 4_000],
    ],
    ['in the pocket: each time after fifteen seconds', false, [15_000, 15_000]],
  ])('that fails is made again on a phone %s', (_, visible, waits) => {
    const rig = new LinkRig().do({ on: 'visible', visible }).do({ on: 'start' });
    for (const wait of waits) {
      rig.do({ on: 'closed', conn: rig.link.conn });
      expect(rig.link.phase).toBe('resting');
      expect(rig.beatAfter(wait - 1)).toEqual([]);
      expect(rig.beatAfter(1)).toEqual([{ do: 'open', conn: rig.link.conn }]);
    }
  });

  it('that succeeded makes the waits short again, and so does looking at the phone', () => {
    const rig = new LinkRig().do({ on: 'start' });
    const failTwice = () => {
      for (let i = 0; i < 2; i++) {
        rig.do({ on: 'closed', conn: rig.link.conn });
        rig.beatAfter(rig.link.retryAt - rig.now);
      }
      return rig;
    };
    failTwice().goLive().do({ on: 'closed', conn: rig.link.conn });
    expect(rig.link.retryAt - rig.now).toBe(250);
    rig.beatAfter(250);
    failTwice().do({ on: 'closed', conn: rig.link.conn });
    rig.do({ on: 'visible', visible: true }).do({ on: 'closed', conn: rig.link.conn });
    expect(rig.link.retryAt - rig.now).toBe(250);
  });

  it('is left to itself meanwhile, the second as the first', () => {
    const rig = new LinkRig().goLive().do({ on: 'closed', conn: 1 });
    expect(rig.beatAfter(3_000)).toEqual([{ do: 'open', conn: 2 }]);
    expect(rig.beatAfter(3_000)).toEqual([]);
  });

  it('is made once only, however often it is asked for', () => {
    const rig = new LinkRig().do({ on: 'start' });
    for (const on of ['start', 'online'] as const) expect(rig.do({ on }).effects).toEqual([]);
    expect(rig.do({ on: 'visible', visible: true }).effects).toEqual([]);
    rig.goLive();
    expect(rig.do({ on: 'start' }).effects).toEqual([]);
    expect(rig.link.conn).toBe(1);
  });

  it('is not made by a phone that has not begun, or that was told to stop', () => {
    const rig = new LinkRig();
    expect(rig.beatAfter(3_600_000)).toEqual([]);
    expect(rig.do({ on: 'online' }).effects).toEqual([]);
    expect(rig.do({ on: 'stop' }).effects).toEqual([]);
    rig.goLive();
    expect(rig.do({ on: 'stop' }).effects).toEqual([CLOSE]);
    expect(rig.beatAfter(3_600_000)).toEqual([]);
    expect(rig.do({ on: 'online' }).effects).toEqual([]);
  });

  it('is not made by turning away from the phone', () => {
    const rig = new LinkRig().goLive().do({ on: 'closed', conn: 1 });
    expect(rig.do({ on: 'visible', visible: false }).effects).toEqual([]);
    expect(rig.link.phase).toBe('resting');
  });
});

describe('a live socket', () => {
  it('is asked for a sign of life after two seconds, and every two from then on', () => {
    const rig = new LinkRig().goLive();
    const pings: number[] = [];
    const from = rig.now;
    for (let i = 0; i < 32; i++) {
      for (const message of rig.sent(rig.beatAfter(250))) {
        if (message.t !== 'ping') continue;
        pings.push(rig.now - from);
        rig.hear({ t: 'pong', n: message.n, now: rig.now });
      }
    }
    expect(pings).toEqual([2_000, 4_000, 6_000, 8_000]);
  });

  it('is dead after six seconds without a frame, not before', () => {
    const rig = new LinkRig().goLive();
    expect(beatsFor(rig, 5_999).filter((effect) => effect.do === 'close')).toEqual([]);
    expect(rig.beatAfter(1)).toEqual([CLOSE]);
  });

  it('lives on by any frame, and by none of another socket', () => {
    const rig = new LinkRig().goLive();
    beatsFor(rig, 5_000);
    rig.do({ on: 'frame', conn: 7, message: { t: 'pong', n: 1, now: 0 } });
    rig.hear({ t: 'speech', speech: { name: 'test', ready: true } });
    expect(beatsFor(rig, 5_999).filter((effect) => effect.do === 'close')).toEqual([]);
    expect(rig.beatAfter(1)).toEqual([CLOSE]);
  });

  it('is doubted, not condemned, after a beat more than four seconds late', () => {
    const inTime = new LinkRig().goLive();
    beatsFor(inTime, 1_000);
    expect(inTime.beatAfter(4_000)).toMatchObject([{ message: { t: 'ping' } }]);
    expect(inTime.link.deadline - inTime.now).toBe(1_000);

    const frozen = new LinkRig().goLive();
    beatsFor(frozen, 1_000);
    expect(frozen.beatAfter(60_000)).toMatchObject([{ message: { t: 'ping' } }]);
    expect(frozen.link.phase).toBe('live');
    expect(frozen.beatAfter(1_999)).toEqual([]);
    expect(frozen.beatAfter(1)).toEqual([CLOSE]);

    const justLate = new LinkRig().goLive();
    beatsFor(justLate, 1_000);
    justLate.beatAfter(4_001);
    expect(justLate.link.deadline - justLate.now).toBe(2_000);
  });

  it.each<[string, (rig: LinkRig) => LinkRig]>([
    ['the phone is looked at', (rig) => rig.do({ on: 'visible', visible: true })],
    ['the network is said to be back', (rig) => rig.do({ on: 'online' })],
  ])('has two seconds to answer when %s', (_, happens) => {
    const rig = happens(new LinkRig().goLive());
    expect(rig.sent()).toEqual([{ t: 'ping', n: 1 }]);
    expect(rig.beatAfter(1_999)).toEqual([]);
    expect(rig.beatAfter(1)).toEqual([CLOSE]);
  });

  it('is doubted while history still comes, too', () => {
    const rig = new LinkRig().do({ on: 'start' }).do({ on: 'opened', conn: 1 });
    expect(rig.do({ on: 'online' }).sent()).toEqual([{ t: 'ping', n: 1 }]);
    expect(rig.beatAfter(2_000)).toEqual([CLOSE]);
  });

  it('that the phone slept through as it connected is given up, not asked', () => {
    const rig = new LinkRig().do({ on: 'start' });
    expect(rig.beatAfter(60_000)).toEqual([CLOSE]);
  });
});
