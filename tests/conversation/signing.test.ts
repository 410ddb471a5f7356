import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { EMPTY, type JobState } from '../../src/visit/state.ts';
import { atSecond, followedBy, jobAfter, LATER, WHOLE_VISIT, without } from '../visit/record.ts';

const sign = (count: number): Input => ({
  kind: 'sign',
  name: 'R. Example',
  role: 'Supervisor',
  signature: { kind: 'typed', text: 'R. Example' },
  head: { job: 'job-on-the-table', count, hash: '0'.repeat(64) },
  findings: ['long-gap'],
});
const outcome = (state: JobState, count: number): string => {
  const response = respond(state, sign(count), atSecond(LATER));
  return response.kind === 'facts' ? response.drafts.map(({ fact }) => fact.type).join() : response.text;
};

const GROWN = 'The record has grown while you read it. Read what is new, then sign again.';
const whole = () => jobAfter(WHOLE_VISIT);
/** The opening and each step of the visit. */
const COUNT = WHOLE_VISIT.length + 1;

describe('a record is signed', () => {
  it.each<[string, () => JobState, number, string | RegExp]>([
    ['when it ends where the signer read to', whole, COUNT, /^signed/],
    ['not when it has grown by one entry since', whole, COUNT - 1, GROWN],
    ['not when it ends before what the signer read', whole, COUNT + 1, GROWN],
    ['not before the job is opened', () => EMPTY, 0, 'There is nothing to sign yet.'],
    [
      'not while the final reading is missing',
      () => jobAfter(without('the final reading')),
      COUNT - 1,
      /reading/,
    ],
    [
      'not while an issue is open',
      () => jobAfter(followedBy([{ type: 'issue-opened', about: 7, text: 'Wrong zone.' }])),
      COUNT + 1,
      /open issue/,
    ],
  ])('%s', (_, state, count, says) => {
    expect(outcome(state(), count)).toMatch(says);
  });

  it('with the name, the signature, the end of the record and the findings that were shown', () => {
    const response = respond(whole(), sign(COUNT), atSecond(LATER));
    const { kind: _, ...signature } = sign(COUNT) as Extract<Input, { kind: 'sign' }>;
    const [draft] = response.kind === 'facts' ? response.drafts : [];
    expect(draft).toEqual({ actor: 'supervisor', fact: { type: 'signed', ...signature } });
  });
});
