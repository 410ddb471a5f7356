import { describe, expect, it } from 'vitest';
import { Audit, rowOf } from '../../server/store/audit.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';

const JOB = 'audit-job';

function log(refs: readonly (string | undefined)[]): Entry[] {
  let head = emptyHead(JOB);
  return refs.map((ref, n) => {
    const fact = { type: 'remark', seat: 'panel', text: `remark ${n}` } as const;
    const entry = seal(head, { actor: 'panel', fact, ...(ref && { ref }) }, n);
    head = headAfter(entry);
    return entry;
  });
}

describe('the audit of the index by which a message is found', () => {
  const entries = log(['first-one', undefined, 'third-one']);
  const sound = [
    { seq: 0, ref: 'first-one' },
    { seq: 2, ref: 'third-one' },
  ];
  it.each([
    ['is sound', sound, undefined],
    ['lacks a message, which would be logged twice', sound.slice(1), { seq: 3, fault: 'ref' }],
    [
      'has a message at another place',
      [{ seq: 1, ref: 'first-one' }, ...sound.slice(1)],
      { seq: 1, fault: 'ref' },
    ],
    [
      'has a message that is not in the log',
      [...sound, { seq: 1, ref: 'strange-one' }],
      { seq: 1, fault: 'ref' },
    ],
    ['has a message twice', [...sound, { seq: 2, ref: 'third-one' }], { seq: 3, fault: 'ref' }],
  ])('it %s', (_, index, fault) => {
    const audit = new Audit(JOB);
    for (const entry of entries) expect(audit.add(rowOf(entry))).toBeUndefined();
    expect(audit.end(headAfter(entries.at(-1) as Entry), index)).toEqual(fault);
  });
});
