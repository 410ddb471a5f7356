import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import type { PairStatus } from '../../src/model/pair-status.ts';
import { statusOf } from '../../src/record/status.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { playedVisit } from '../findings/site.ts';
import { TableCommissioning } from '../visit/bench.ts';
import {
  accepted,
  answered,
  atSecond,
  followedBy,
  jobAfter,
  LATER,
  reads,
  SETUP,
  type Step,
  seqOf,
  turned,
  WHOLE_VISIT,
  without,
} from '../visit/record.ts';

const status = (job: TableCommissioning) => statusOf(job.state, job.now);

describe('on the board a pair is', () => {
  it('not started without a visit', () => {
    expect(statusOf(undefined, 0)).toBe('not-started');
    expect(statusOf(EMPTY, 0)).toBe('not-started');
  });

  it('not aligning in calm blue while its outputs are isolated', () => {
    expect(status(TableCommissioning.listed())).toBe('isolated');
  });

  it('isolated, then proven, then signed, in a visit where all goes well', () => {
    const seen = new Set<string>();
    // Once proven, it needs attention until its outputs are back.
    let state = EMPTY;
    for (const entry of playedVisit()) {
      state = fold(state, entry);
      seen.add(statusOf(state, entry.at));
    }
    expect([...seen]).toEqual(['aligning', 'isolated', 'needs-attention', 'proven', 'signed']);
  });

  it.each([
    ['accepted against its evidence', (_: TableCommissioning) => {}],
    ['left with an issue open', (job: TableCommissioning) => job.alarmTest({ after: 3 })],
    ['stopped', (job: TableCommissioning) => job.say('panel', 'stop')],
  ])('in need of attention when %s', (_, happen) => {
    const job = TableCommissioning.aligned();
    happen(job);
    expect(status(job)).toBe('needs-attention');
  });

  it.each([
    ['left with its outputs isolated', 'left-isolated'],
    ['signed though it was accepted by override', 'overridden'],
  ] as const)('in need of attention when %s', (_, plant) => {
    const entries = playedVisit([plant]);
    expect(statusOf(entries.reduce(fold, EMPTY), entries.at(-1)?.at ?? 0)).toBe('needs-attention');
  });

  it('in need of attention when its log fails its check, even if it was signed', () => {
    const entries = playedVisit();
    const state = entries.reduce(fold, EMPTY);
    const at = entries.at(-1)?.at ?? 0;
    expect(statusOf(state, at)).toBe('signed');
    expect(statusOf(state, at, { seq: 9, fault: 'hash' })).toBe('needs-attention');
  });

  it('in need of attention when its record changed after it was signed', () => {
    const job = TableCommissioning.aligned();
    job.alarmTest();
    job.faultTest();
    job.finish();
    job.sign();
    job.say('panel', '139');
    expect(status(job)).toBe('needs-attention');
  });
});

describe('what stands last in the log decides', () => {
  const upTo = (name: string): Step[] => WHOLE_VISIT.slice(0, seqOf(name));
  const override = { reason: 'Access withdrawn', missing: ['in-band'] };
  const signed: Fact = {
    type: 'signed',
    name: 'R. Example',
    role: 'Supervisor',
    signature: { kind: 'typed', text: 'R. Example' },
    head: { job: 'job-on-the-table', count: 23, hash: '0'.repeat(64) },
    findings: [],
  };
  const issue: Fact = { type: 'issue-opened', about: seqOf('the alarm'), text: 'Wrong zone.' };
  const closed: Fact = { type: 'issue-closed', issue: WHOLE_VISIT.length + 1, how: 'Labels exchanged.' };
  const again = { type: 'restarted' } as const;

  it.each<[string, readonly Step[], PairStatus]>([
    ['opened', [], 'aligning'],
    ['just before the acceptance', upTo('the path looked along'), 'isolated'],
    ['accepted', upTo('the alignment accepted'), 'isolated'],
    ['tested, and not yet read at the end', upTo('the wire broken and seen'), 'isolated'],
    ['read at the end, with the outputs still isolated', upTo('the final reading'), 'needs-attention'],
    ['the outputs restored', upTo('the outputs restored'), 'proven'],
    ['all done but signed', WHOLE_VISIT, 'proven'],
    ['all done, and the outputs never isolated', without('the outputs isolated'), 'proven'],
    [
      'all done, and isolated once more',
      followedBy([answered('before', 'outputs-isolated')]),
      'needs-attention',
    ],
    ['turned after all', followedBy([turned]), 'aligning'],
    ['turned after all, and accepted again', followedBy([turned, accepted]), 'aligned'],
    ['signed', followedBy([signed]), 'signed'],
    ['signed by two', followedBy([signed, { ...signed, name: 'W. Example' }]), 'signed'],
    ...['the alarm', 'the fault', 'the right zone seen', 'the wire broken and seen', 'the final reading'].map(
      (name): [string, readonly Step[], PairStatus] => [
        `signed without ${name}`,
        [...without(name), ['', 400, signed]],
        'signed-not-proven',
      ],
    ),
    [
      'signed after a test that showed nothing, answered for in writing',
      [
        ...without('the alarm'),
        ['', 300, { type: 'issue-opened', about: seqOf('half covered'), text: 'No alarm.' }],
        ['', 301, { type: 'issue-closed', issue: WHOLE_VISIT.length, how: 'The panel delays it.' }],
        ['', 400, signed],
      ],
      'signed-not-proven',
    ],
    ['signed, and then read', followedBy([signed, reads({ kind: 'none' })]), 'needs-attention'],
    ['signed, then read, and signed again', followedBy([signed, reads({ kind: 'none' }), signed]), 'signed'],
    ['an issue open', followedBy([issue]), 'needs-attention'],
    ['that issue closed', followedBy([issue, closed]), 'proven'],
    ['one issue closed and another open', followedBy([issue, issue, closed]), 'needs-attention'],
    ['signed with an issue open', followedBy([issue, signed]), 'needs-attention'],
    ['stopped', followedBy([{ type: 'stopped' }]), 'needs-attention'],
    ['stopped, and begun again', followedBy([{ type: 'stopped' }, again]), 'proven'],
    ['stopped before anything was accepted', [['', 0, { type: 'stopped' }]], 'needs-attention'],
    [
      'accepted by override, and signed',
      followedBy([{ type: 'accept', reading: { kind: 'none' }, override }, signed]),
      'needs-attention',
    ],
    [
      'accepted by override, and then on its evidence',
      [
        ['', 0, { type: 'accept', reading: { kind: 'none' }, override }],
        ['', 1, accepted],
      ],
      'aligned',
    ],
  ])('%s', (_, steps, status) => {
    expect(statusOf(jobAfter(steps), atSecond(LATER))).toBe(status);
  });

  it('an alignment alone is aligned once accepted, and never proven', () => {
    const { scope: _, ...alone } = SETUP;
    expect(statusOf(jobAfter([], alone), atSecond(LATER))).toBe('aligning');
    expect(statusOf(jobAfter(WHOLE_VISIT, alone), atSecond(LATER))).toBe('aligned');
    expect(statusOf(jobAfter(followedBy([signed]), alone), atSecond(LATER))).toBe('signed-not-proven');
  });
});
