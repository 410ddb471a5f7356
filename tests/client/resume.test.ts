import { describe, expect, it } from 'vitest';
import { type LinkEvent, newLink } from '../../client/link/link.ts';
import type { Entry } from '../../src/model/entry.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { logOf, opened, remark, TOKEN } from './fixtures.ts';
import { LinkRig } from './link-rig.ts';

const LOG = logOf([opened, ...['one', 'two', 'three', 'four'].map((text) => remark(text))]);
const entries = (...seqs: number[]): Entry[] => seqs.map((seq) => LOG[seq] as Entry);

/** A phone that held the first entries of the log and has come back on a second socket. */
const back = (held: number): LinkRig => {
  const rig = new LinkRig().goLive(LOG.slice(0, held)).do({ on: 'closed', conn: 1 });
  rig.beatAfter(250);
  return rig.do({ on: 'opened', conn: 2 });
};

it.each<[string, number, number]>([
  ['nothing', 0, -1],
  ['the first entry', 1, 0],
  ['four entries', 4, 3],
])('a phone that holds %s asks for what comes after', (_, held, after) => {
  const rig = new LinkRig();
  rig.link = newLink(TOKEN, [], LOG.slice(0, held));
  rig.do({ on: 'start' }).do({ on: 'opened', conn: 1 });
  expect(rig.effects).toEqual([
    { do: 'send', conn: 1, message: { t: 'hello', v: PROTOCOL_VERSION, token: TOKEN, after } },
  ]);
  expect(rig.link.phase).toBe('catching-up');
});

it('a phone knows nothing, wants nothing and has failed nothing before it begins', () => {
  expect(newLink(TOKEN)).toEqual({
    token: TOKEN,
    phase: 'resting',
    conn: 0,
    visible: true,
    entries: [],
    historyEnd: -1,
    outbox: [],
    complaints: [],
    offset: undefined,
    offsetTrip: Number.POSITIVE_INFINITY,
    presence: undefined,
    serverStops: false,
    speech: undefined,
    hearing: {},
    invites: {},
    ended: undefined,
    failures: 0,
    retryAt: Number.POSITIVE_INFINITY,
    deadline: Number.POSITIVE_INFINITY,
    pingAt: Number.POSITIVE_INFINITY,
    pings: [],
    tickedAt: 0,
  });
});

describe('of the entries that come, a phone that holds two', () => {
  it.each<[string, number[], number | 'closed']>([
    ['takes the next', [2], 3],
    ['takes the next ones', [2, 3, 4], 5],
    ['leaves out those it has', [0, 1], 2],
    ['leaves out those it has before those it has not', [0, 1, 2, 3], 4],
    ['leaves out none at all', [], 2],
    ['trusts no socket that leaves out the next', [3], 'closed'],
    ['trusts none that leaves out one between', [2, 4], 'closed'],
    ['trusts none that leaves out one after those it has', [1, 3], 'closed'],
    ['trusts none that sends one twice at once', [2, 2], 'closed'],
    ['trusts none that sends them out of order', [3, 2], 'closed'],
  ])('%s', (_, seqs, holds) => {
    const rig = back(2).hear({ t: 'entries', entries: entries(...seqs) });
    if (holds === 'closed') {
      expect(rig.effects).toEqual([{ do: 'close', conn: 2 }]);
      expect(rig.link.entries).toEqual(LOG.slice(0, 2));
      rig.beatAfter(rig.link.retryAt - rig.now);
      expect(rig.do({ on: 'opened', conn: 3 }).sent()).toMatchObject([{ t: 'hello', after: 1 }]);
    } else {
      expect(rig.effects).toEqual([]);
      expect(rig.link.entries).toEqual(LOG.slice(0, holds));
    }
  });

  it('draws nothing restartedAt for those it has', () => {
    const rig = back(2);
    const { entries: held } = rig.link;
    expect(rig.hear({ t: 'entries', entries: entries(0, 1) }).link.entries).toBe(held);
  });

  it('is live, and knows where history ended, only when it is told so', () => {
    const rig = back(2).hear({ t: 'entries', entries: entries(2, 3) });
    expect(rig.link).toMatchObject({ phase: 'catching-up', historyEnd: 1 });
    rig.hear({ t: 'caught-up', seq: 3 }).hear({ t: 'entries', entries: entries(4) });
    expect(rig.link).toMatchObject({ phase: 'live', historyEnd: 3, failures: 0 });
  });
});

describe('a phone on its second socket', () => {
  const presence = { panel: 'online', emitter: 'online', watchers: 9 } as const;
  it.each<[string, LinkEvent]>([
    ['a frame of the first', { on: 'frame', conn: 1, message: { t: 'presence', presence } }],
    ['entries of the first', { on: 'frame', conn: 1, message: { t: 'entries', entries: entries(2) } }],
    ['the end of the first', { on: 'closed', conn: 1 }],
    ['an unreadable frame of the first', { on: 'unreadable', conn: 1 }],
    ['the first, opened at last', { on: 'opened', conn: 1 }],
    ['its own, opened once more', { on: 'opened', conn: 2 }],
  ])('does not heed %s', (_, event) => {
    const rig = back(2).hear({ t: 'caught-up', seq: 1 });
    const { link } = rig;
    rig.do(event);
    expect(rig.effects).toEqual([]);
    expect(rig.link).toBe(link);
  });

  it.each<[string, LinkEvent]>([
    ['a frame', { on: 'frame', conn: 2, message: { t: 'entries', entries: entries(2) } }],
    ['its end', { on: 'closed', conn: 2 }],
    ['an unreadable frame', { on: 'unreadable', conn: 2 }],
    ['its opening', { on: 'opened', conn: 2 }],
  ])('does not heed %s of it any more once it has given it up', (_, event) => {
    const rig = back(2).do({ on: 'closed', conn: 2 });
    const { link } = rig;
    rig.do(event);
    expect(rig.effects).toEqual([]);
    expect(rig.link).toBe(link);
  });

  it('does not heed the opening of the first while it waits for its own', () => {
    const rig = new LinkRig().goLive(LOG.slice(0, 2)).do({ on: 'closed', conn: 1 });
    rig.beatAfter(250);
    expect(rig.do({ on: 'opened', conn: 1 }).link.phase).toBe('connecting');
    expect(rig.effects).toEqual([]);
  });
});
