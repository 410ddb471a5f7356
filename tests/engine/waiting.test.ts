import { describe, expect, it } from 'vitest';
import { look } from '../../src/engine/view.ts';
import { coveredPath, unsettled } from '../../src/engine/waiting.ts';
import { Job } from './crew-of-two.ts';

const SETTLE_MS = 4_000;

const covered = (job: Job, now = job.at) => coveredPath(look(job.search), now);
const waits = (job: Job, now = job.at) => unsettled(look(job.search), now);

/** A reading stood, and the path was covered for the check. */
const checking = () => {
  const job = new Job();
  job.reads(55);
  job.say({ type: 'path', state: 'blocked' });
  return job;
};

describe('with the path covered', () => {
  it('has nothing to say where it is clear', () => {
    const job = new Job();
    job.reads(55);
    expect(covered(job)).toBeUndefined();
  });

  it.each([
    ['covered in part', 'partial'],
    ['covered with nothing read before', 'blocked'],
  ] as const)('asks to free it: %s', (_, state) => {
    const job = new Job();
    if (state === 'partial') job.reads(55);
    job.say({ type: 'path', state });
    expect(covered(job)?.advice).toMatchObject({ rule: 'free-path', action: { kind: 'unblock' } });
  });

  it('waits for the settle time after the covering, then asks for a reading', () => {
    const job = checking();
    const until = job.at + SETTLE_MS;
    expect(covered(job, until - 1)).toMatchObject({
      advice: { rule: 'settle', action: { kind: 'hold', reason: 'settling', until } },
      wakeAt: until,
    });
    expect(covered(job, until)?.advice).toMatchObject({ rule: 'blocking-check', action: { kind: 'read' } });
  });

  it('waits for the settle time after a reading that does not count yet, the newest of them', () => {
    const job = checking();
    job.reads(10, 1_000);
    job.reads(10, 500);
    const until = job.at + SETTLE_MS;
    expect(covered(job, until - 1)?.advice.action).toMatchObject({ kind: 'hold', until });
    expect(covered(job, until)?.advice.action).toEqual({ kind: 'read' });
  });

  it.each([
    ['went dark', ['nothing']],
    ['stayed light', [50, 50]],
  ] as const)('asks to free it once the reading %s', (_, readings) => {
    const job = checking();
    for (const reading of readings) job.reads(reading);
    expect(covered(job)?.advice.rule).toBe('free-path');
  });
});

describe('without a settled reading', () => {
  it('waits for the settle time, then asks for a reading beside the one before', () => {
    const job = new Job();
    const before = job.reads(55);
    expect(waits(job)).toBeUndefined();
    job.turns('horizontal', 6);
    const until = job.at + SETTLE_MS;
    expect(waits(job, until - 1)).toMatchObject({
      advice: { rule: 'settle', action: { kind: 'hold', reason: 'settling', until } },
      wakeAt: until,
    });
    expect(waits(job, until)?.advice).toMatchObject({
      rule: 'read',
      action: { kind: 'read' },
      because: [before],
    });
  });

  it.each([
    ['has broken away twice', [30, 41, 33], undefined],
    ['has broken away three times', [30, 41, 33, 46], 'wandering'],
  ] as const)('asks what moves, or not, when the reading %s', (_, readings, rule) => {
    const job = new Job();
    for (const reading of readings) job.reads(reading);
    expect(waits(job)?.advice.rule).toBe(rule);
    if (rule)
      expect(waits(job)?.advice.action).toMatchObject({ kind: 'check', causes: { 0: 'loose-mount' } });
  });
});
