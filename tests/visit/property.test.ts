import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/model/advice.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { advise } from '../../src/visit/advise.ts';
import { unreported } from '../../src/visit/issues.ts';
import { commissionOf } from '../../src/visit/search.ts';
import { missingForSignoff } from '../../src/visit/signoff.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { SETUP } from '../findings/site.ts';

const WORDS = [
  'yes',
  'no',
  'done',
  'told security',
  '140',
  '70',
  'no signal',
  'half covered',
  'blocked',
  'clear',
  'panel shows alarm',
  'panel shows fault',
  'panel normal',
  'undo',
  'gain down',
  'vertical a quarter clockwise',
  'go on',
] as const;

/** `follow`: the crew does as it was told. */
type Step = { words: (typeof WORDS)[number] } | { override: true } | { seconds: number } | { follow: true };

const stepWith = (follow: number): fc.Arbitrary<Step> =>
  fc.oneof(
    { weight: follow, arbitrary: fc.constant({ follow: true as const }) },
    { weight: 8, arbitrary: fc.record({ words: fc.constantFrom(...WORDS) }) },
    { weight: 1, arbitrary: fc.constant({ override: true as const }) },
    { weight: 4, arbitrary: fc.record({ seconds: fc.integer({ min: 1, max: 130 }) }) },
  );

/** What answers each kind of advice; the alignment itself is cut short by overriding. */
const ANSWERS: Partial<Record<Action['kind'], string>> = {
  'confirm-item': 'yes, told security',
  read: '140',
  uncover: 'clear',
  unblock: 'clear',
  check: 'done',
};

function answerTo(action: Action | undefined): string {
  if (action?.kind === 'cover') return action.how === 'full' ? 'blocked' : 'half covered';
  if (action?.kind === 'watch-panel') return `panel shows ${action.expect}`;
  return (action && ANSWERS[action.kind]) ?? 'go on';
}

/** A crew that says anything at any time. */
function play(steps: readonly Step[]): LoggedJob {
  const job = new LoggedJob('property-job', 1_800_000_000_000);
  job.input({ kind: 'open', setup: SETUP });
  job.input({ kind: 'seated', seat: 'panel', device: '', takeover: false });
  job.input({ kind: 'seated', seat: 'emitter', device: '', takeover: false });
  for (const each of steps) {
    if ('words' in each) job.say('panel', each.words);
    else if ('follow' in each) {
      const action = job.state.instruction?.advice.action;
      if (action?.kind === 'watch-panel' && action.expect === 'alarm') job.say('panel', '70');
      if (action?.kind === 'watch-panel' && action.expect === 'fault') job.say('panel', 'no signal');
      job.wait(action?.kind === 'watch-panel' ? (action.expect === 'fault' ? 20_000 : 10_000) : 5_000);
      job.say('panel', answerTo(action));
    } else if ('seconds' in each) job.wait(each.seconds * 1000);
    else if (job.state.reading) {
      try {
        job.input({ kind: 'override', seat: 'panel', reason: 'Because a property wants it' });
      } catch (refusal) {
        expect(String(refusal)).toContain('bad-target');
      }
    }
  }
  return job;
}

describe('whatever a crew says, in whatever order', () => {
  it('advice is given, the same again on replay, and no failed test is left without an issue', () => {
    fc.assert(
      fc.property(fc.array(stepWith(6), { maxLength: 60 }), (steps) => {
        const job = play(steps);
        let state = EMPTY;
        for (const entry of job.entries) {
          const commission = commissionOf(state);
          if (entry.fact.type === 'instruction' && commission) {
            expect(advise(commission, entry.at).advice).toEqual(entry.fact.advice);
          }
          state = fold(state, entry);
        }
        expect(state).toEqual(job.state);
        job.say('panel', 'go on');
        const end = commissionOf(job.state);
        expect(end && unreported(end, job.now)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('nothing is ever signable with the outputs isolated, an issue open, or no acceptance', () => {
    let signable = 0;
    fc.assert(
      fc.property(fc.array(stepWith(80), { minLength: 60, maxLength: 80, size: 'max' }), (steps) => {
        const job = play([...steps.slice(0, 12), { override: true }, ...steps.slice(12)]);
        const commission = commissionOf(job.state);
        if (!commission || missingForSignoff(commission, job.now).length > 0) return;
        signable += 1;
        const last = commission.counted.findLast(
          (fact) =>
            fact.type === 'item' && (fact.item === 'outputs-restored' || fact.item === 'outputs-isolated'),
        );
        expect(last).toMatchObject({ item: 'outputs-restored', done: true });
        expect(commission.issues.every(({ closed }) => closed)).toBe(true);
        expect(commission.search.accepted).toBeDefined();
      }),
      { numRuns: 60, seed: 7 },
    );
    // The crew follows its advice often enough that some of them get there.
    expect(signable).toBeGreaterThan(5);
  });
});
