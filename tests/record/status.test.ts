import { describe, expect, it } from 'vitest';
import { statusOf } from '../../src/record/status.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { playedVisit } from '../findings/site.ts';
import { TableCommissioning } from '../visit/bench.ts';

const status = (job: TableCommissioning) => statusOf(job.state, job.now);

describe('on the board a pair is', () => {
  it('not started without a visit', () => {
    expect(statusOf(undefined, 0)).toBe('not-started');
    expect(statusOf(EMPTY, 0)).toBe('not-started');
  });

  it('aligning until its alignment is accepted', () => {
    expect(status(TableCommissioning.listed())).toBe('aligning');
  });

  it('aligned, then proven, then signed, in a visit where all goes well', () => {
    const seen = new Set<string>();
    // Once proven, it needs attention until its outputs are back.
    let state = EMPTY;
    for (const entry of playedVisit()) {
      state = fold(state, entry);
      seen.add(statusOf(state, entry.at));
    }
    expect([...seen]).toEqual(['aligning', 'aligned', 'needs-attention', 'proven', 'signed']);
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
