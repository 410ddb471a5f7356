import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { EMPTY, type JobState } from '../../src/visit/state.ts';
import { atSecond, followedBy, jobAfter, LATER, WHOLE_VISIT, without } from '../visit/record.ts';

const sign = (count: number, name = 'R. Example', text = name) => ({
  kind: 'sign' as const,
  name,
  role: 'Supervisor',
  signature: { kind: 'typed' as const, text },
  head: { job: 'job-on-the-table', count, hash: '0'.repeat(64) },
  findings: ['long-gap'],
});
const outcome = (state: JobState, count: number, input: Input = sign(count)): string => {
  const response = respond(state, input, atSecond(LATER));
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
    const { kind: _, ...signature } = sign(COUNT);
    const [draft] = response.kind === 'facts' ? response.drafts : [];
    expect(draft).toEqual({ actor: 'supervisor', fact: { type: 'signed', ...signature } });
  });
});

describe('a typed signature', () => {
  const WRONG = /not the name of the signer/;
  it.each<[string, string, RegExp]>([
    ['R. Example', 'r.  example', /^signed/],
    ['R. Example', 'R Example', WRONG],
    ['R. Example', 'S. Example', WRONG],
    ['R. Example', 'R. Example jun.', WRONG],
  ])('of %s as %j', (name, text, says) => {
    expect(outcome(whole(), COUNT, sign(COUNT, name, text))).toMatch(says);
  });

  it('drawn, is not compared with the name', () => {
    const drawn: Input = { ...sign(COUNT), signature: { kind: 'drawn', strokes: [[[1, 1]]] } };
    expect(outcome(whole(), COUNT, drawn)).toMatch(/^signed/);
  });
});

describe('a second signature', () => {
  const { kind: _, ...first } = sign(COUNT);
  const signed = { type: 'signed', ...first } as const;
  const once = () => jobAfter(followedBy([signed]));
  const read = { type: 'reading', reading: { kind: 'none' } } as const;

  it('stands beside the first, and changes nothing', () => {
    const state = jobAfter(followedBy([signed, { ...signed, name: 'W. Example' }]));
    expect(state.signed?.name).toBe('R. Example');
    expect(state.beside.map(({ name }) => name)).toEqual(['W. Example']);
    expect(state.changedBy).toBeUndefined();
  });

  it('is of another person', () => {
    expect(outcome(once(), COUNT + 1, sign(COUNT + 1, 'W. Example'))).toMatch(/^signed/);
    expect(outcome(once(), COUNT + 1, sign(COUNT + 1, 'r. EXAMPLE'))).toMatch(
      /has signed this record already/,
    );
  });

  it('on a record that has changed, takes the place of all before', () => {
    const second = { ...signed, name: 'W. Example' };
    const changed = jobAfter(followedBy([signed, second, read]));
    expect(changed.changedBy).toBe(COUNT + 2);
    expect([changed.signed?.name, changed.beside.length]).toEqual(['R. Example', 1]);
    const again = jobAfter(followedBy([signed, second, read, { ...signed, name: 'C. Example' }]));
    expect([again.signed?.name, again.beside, again.changedBy]).toEqual(['C. Example', [], undefined]);
  });
});
