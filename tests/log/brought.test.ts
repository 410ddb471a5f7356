import { describe, expect, it } from 'vitest';
import { findBroughtFault } from '../../src/log/brought.ts';
import { hashOf, headAfter, seal } from '../../src/log/chain.ts';
import { AloneWay } from '../../src/model/alone.ts';
import type { Draft, Entry } from '../../src/model/entry.ts';
import { Fact, type FactOf } from '../../src/model/facts.ts';
import { kindsOf } from '../../src/model/kinds.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { SETUP } from '../server/phone.ts';

/** What a phone writes before any server has seen it. */
function kept(setup: Partial<JobSetup> = {}): Entry[] {
  const job = new LoggedJob('kept-on-phone', Date.UTC(2026, 4, 4, 8));
  job.input({ kind: 'open', setup: { ...SETUP, alone: 'walking', ...setup } });
  job.input({ kind: 'seated', seat: 'panel', device: 'Android phone', takeover: false });
  job.say('panel', '142');
  job.wait(10_000);
  return job.entries;
}

/** One more entry, sealed as if it belonged there. */
function and(entries: readonly Entry[], draft: Draft): Entry[] {
  const last = entries.at(-1) as Entry;
  return [...entries, seal(headAfter(last), draft, last.at, hashOf)];
}

/** Of an entry only its kind counts here: the server has read its shape before. */
const only = (type: Fact['type']): Draft => ({ actor: 'panel', fact: { type } as Fact });

const BY_PHONES: readonly Fact['type'][] = [
  ...[
    'seated',
    'link',
    'camera',
    'sensor',
    'said',
    'pause',
    'resume',
    'remark',
    'mounted',
    'readback',
    'query',
    'notice',
  ],
  ...['instruction', 'withdrawn', 'stopped', 'restarted', 'issue-opened', 'issue-closed'],
  ...['reading', 'trend', 'move', 'gain', 'path', 're-aimed', 'disturbed', 'choice', 'cannot', 'checked'],
  ...['item', 'panel', 'confirm', 'retract', 'accept'],
  ...['as-left', 'conditions', 'variation', 'next-due', 'struck-out', 'step'],
] as Fact['type'][];

/** What is found after all parts. */
function faultOfBrought(entries: readonly Entry[]) {
  const looking = findBroughtFault(entries);
  for (;;) {
    const { done, value } = looking.next();
    if (done) return value;
  }
}

describe('a log that one phone has kept', () => {
  it.each([...AloneWay.options, undefined])(
    'R145: of one person (%s), or of two that have met without a server, is taken',
    (alone) => {
      expect(faultOfBrought(kept({ alone }))).toBeUndefined();
    },
  );

  it('R145: of a practice is not', () => {
    expect(faultOfBrought(kept({ practice: { seed: 1, troubles: [] } }))).toBe('practice');
  });

  it('R145: is not taken when an entry was changed, left out or put elsewhere, or when there is none', () => {
    const whole = kept();
    const [first, second, third] = whole as [Entry, Entry, Entry];
    const changed = { ...second, at: second.at + 1 };
    for (const wrong of [
      [],
      whole.slice(1),
      whole.toSpliced(1, 1),
      whole.toSpliced(1, 1, changed),
      [first, third, second, ...whole.slice(3)],
      [...whole, first],
    ])
      expect(faultOfBrought(wrong)).toBe('damaged');
  });

  it('R148: is looked at in parts, and what is wrong in a later one is found', () => {
    let whole = kept();
    while (whole.length < 250) whole = and(whole, only('remark'));
    const parts = [...findBroughtFault(whole)];
    expect(parts).toHaveLength(3);
    expect(faultOfBrought(whole)).toBeUndefined();
    for (const at of [99, 100, 199, 200, 249])
      expect(faultOfBrought(whole.with(at, { ...(whole[at] as Entry), at: 1 }))).toBe('damaged');
    expect(faultOfBrought(whole.toSpliced(200, 1))).toBe('damaged');
  });

  it.each(kindsOf(Fact, 'type').map((type) => [type, BY_PHONES.includes(type)] as const))(
    'R145: with an entry %s is taken: %s',
    (type, isTaken) => {
      expect(faultOfBrought(and(kept(), only(type)))).toBe(isTaken ? undefined : 'foreign');
    },
  );

  it('R145: holds no sound, which would have to lie beside it, and nothing by a supervisor', () => {
    const said = { type: 'said', seat: 'panel', via: 'voice', text: 'nine' } as const;
    const sound = { hash: '0'.repeat(64), ms: 400, deletedAt: 0 } as unknown as FactOf<'said'>['sound'];
    expect(faultOfBrought(and(kept(), { actor: 'panel', fact: said }))).toBeUndefined();
    expect(faultOfBrought(and(kept(), { actor: 'panel', fact: { ...said, sound } }))).toBe('foreign');
    const remark = { type: 'remark', seat: 'panel', text: 'seen' } as const;
    expect(faultOfBrought(and(kept(), { actor: 'supervisor', fact: remark }))).toBe('foreign');
  });
});
