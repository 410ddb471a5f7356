import { describe, expect, it } from 'vitest';
import { trustworthy } from '../../client/link/known.ts';
import { logOf, opened, remark } from './fixtures.ts';
import { LinkRig, welcome } from './link-rig.ts';

const log = logOf([opened, remark('one'), remark('two')]);
/** The same beginning, and another end: as a server has it that was restored from a copy, and went on. */
const other = logOf([opened, remark('one'), remark('another')]);

describe('what this phone kept of a log', () => {
  it('is trusted when it is whole', () => {
    expect(trustworthy(log)).toEqual(log);
  });

  it.each([
    ['with its beginning missing', log.slice(1)],
    ['with a gap', [log[0], log[2]]],
    ['out of order', [log[0], log[2], log[1]]],
    ['with an entry of another log', [log[0], log[1], { ...log[2], prev: '0'.repeat(64) }]],
    [
      'that this version cannot read',
      [...log.slice(0, 2), { ...log[2], fact: { type: 'of-a-later-version' } }],
    ],
    ['that is no log', ['text']],
  ])('is not trusted %s', (_, kept) => {
    expect(trustworthy(kept)).toEqual([]);
  });
});

describe('a server whose log is not the one that this phone has seen', () => {
  it('is found by the head of its log, when both are of the same length', () => {
    const rig = new LinkRig().goLive(log).do({ on: 'closed', conn: 1 }).do({ on: 'online' });
    rig.do({ on: 'opened', conn: rig.link.conn }).hear(welcome(rig.now, other));
    expect(rig.link.ended?.reason).toBe('from-the-future');
  });

  it('is found by the first entry that does not follow, when its log is longer', () => {
    const rig = new LinkRig().goLive(log).do({ on: 'closed', conn: 1 }).do({ on: 'online' });
    const longer = logOf([opened, remark('one'), remark('another'), remark('three')]);
    rig.do({ on: 'opened', conn: rig.link.conn }).hear(welcome(rig.now, longer));
    rig.hear({ t: 'entries', entries: longer.slice(3) });
    expect(rig.link.ended?.reason).toBe('from-the-future');
    expect(rig.link.entries).toEqual(log);
  });

  it('is not suspected when its log goes on from there', () => {
    const rig = new LinkRig().goLive(log).do({ on: 'closed', conn: 1 }).do({ on: 'online' });
    const longer = logOf([opened, remark('one'), remark('two'), remark('three')]);
    rig.goLive(longer);
    expect(rig.link.phase).toBe('live');
    expect(rig.link.entries).toEqual(longer);
  });
});
