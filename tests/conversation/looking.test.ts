import { describe, expect, it } from 'vitest';
import { checked } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Fact, FactOf } from '../../src/model/facts.ts';
import { INDICATOR } from '../../src/model/profile.ts';
import { answersTo } from '../../src/phrases/answers.ts';
import { cautionsOf, LOOKING_CAUTIONS } from '../../src/phrases/cautions.ts';
import { searchFactText } from '../../src/phrases/facts.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { lookText, NO_NUMBER_HERE, TOO_SOON, UNDO_FIRST } from '../../src/phrases/looking.ts';
import { OpenJob } from '../../src/protocol/jobs.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { pairPage } from '../../src/report/pair-page.ts';
import { shortfallDb } from '../../src/simulator/pair.ts';
import { understand } from '../../src/understand/understand.ts';
import { searchOf } from '../../src/visit/search.ts';
import { wordsOf } from '../report/words.ts';
import { verified } from '../verify/checked.ts';
import { LOOKING, LookingJob } from './looking-job.ts';

const isAccepted = ({ state }: LookingJob): boolean => state.accepted !== undefined;
const isLooking = ({ action }: LookingJob): boolean => action?.kind === 'read';
const facts = <T extends Fact['type']>(job: LookingJob, type: T): FactOf<T>[] =>
  job.entries.map(({ fact }) => fact).filter((fact): fact is FactOf<T> => fact.type === type);
const lastQuery = (job: LookingJob): string | undefined => facts(job, 'query').at(-1)?.text;

describe('one person who sees an indicator from the ladder', () => {
  const job = new LookingJob().goOn(isAccepted);

  it('is led to an acceptance with all its evidence, near the peak, and no number is ever asked for or read', () => {
    expect(searchOf(job.state)?.accepted).toMatchObject({ backed: true, missing: [] });
    expect(shortfallDb(job.pair)).toBeLessThan(0.5);
    expect(facts(job, 'reading').some(({ reading }) => reading.kind === 'value')).toBe(false);
    for (const { advice } of facts(job, 'instruction'))
      if (advice.action.kind === 'read') expect(advice.action.as).toBe('trend');
    expect(facts(job, 'instruction').some(({ say }) => say.includes('Panel'))).toBe(false);
  });

  it('is accepted on trends, and the record, its check and the report say that nobody read a number', () => {
    const [accept] = facts(job, 'accept');
    expect(accept?.reading).toEqual({ kind: 'seen' });
    expect(accept && searchFactText(accept, INDICATOR)).toBe('accepted on trends, no reading');
    const result = verified(toJsonLines(job.entries, job.head));
    expect(result).toMatchObject({ ok: true, replayed: true });
    const found = result.ok ? result.findings.map(({ id, severity }) => [id, severity]) : [];
    expect(found).toHaveLength(2);
    // Somebody still has to read the signal: more than a note.
    expect(found).toContainEqual(['alone', 'question']);
    expect(found).toContainEqual(['unnamed', 'note']);
    const visits = [checked({ entries: job.entries, head: job.head })];
    const plan = { id: 'p', name: 'B2', meter: INDICATOR, adjusters: LOOKING.adjusters };
    const words = wordsOf(pairPage({ plan, visits }, momentsIn('UTC')).part).join('\n');
    expect(words).toContain('accepted on trends, no reading');
    expect(words).toContain('whether it lies in the band is not known');
    expect(words).not.toMatch(/\bband 40\b/);
    expect(words).not.toContain('no signal, accepted');
  });

  it('reads a caution of its own', () => {
    expect(cautionsOf(LOOKING)).toEqual(expect.arrayContaining([...LOOKING_CAUTIONS]));
    expect(cautionsOf({ alone: 'walking' })).not.toEqual(expect.arrayContaining([...LOOKING_CAUTIONS]));
  });
});

describe('what is said where no number is read', () => {
  it('R160: counts from the settle time after the hands were off on, and not a moment sooner', () => {
    const before = new LookingJob().goOn(
      ({ action, state }) => action?.kind === 'hold' && (searchOf(state)?.moves ?? 0) > 0,
    );
    for (const [early, counts] of [
      [1, false],
      [0, true],
    ] as const) {
      for (const word of ['rising', 'nothing', 'too strong', 'steady']) {
        const job = replay(before);
        const since = searchOf(job.state)?.stay.since as number;
        job.wait(since + INDICATOR.settleMs - early - job.now);
        const looks = searchOf(job.state)?.looks?.length;
        job.say('panel', word);
        expect(searchOf(job.state)?.looks?.length, `${word}, ${early} ms early`).toBe(
          (looks ?? 0) + (counts ? 1 : 0),
        );
        if (!counts) expect(lastQuery(job)).toBe(TOO_SOON);
      }
    }
  });

  it.each(['142', 'about fifty'])('R161: a number, such as %s, is never taken', (words) => {
    const job = new LookingJob().goOn(isLooking);
    job.say('panel', words);
    expect(lastQuery(job)).toBe(NO_NUMBER_HERE);
    expect(facts(job, 'reading')).toEqual([]);
    expect(searchOf(job.state)?.looks).toEqual([]);
  });

  it('R161: a number in place of another one is answered by the way to take a look back', () => {
    const job = new LookingJob().goOn(isLooking);
    job.say('panel', 'wrong, 142');
    expect(lastQuery(job)).toBe(UNDO_FIRST);
  });

  it('a look is taken back by "undo", and asked for anew', () => {
    const job = new LookingJob().goOn(isLooking);
    job.say('panel', 'steady');
    expect(searchOf(job.state)?.looks).toHaveLength(1);
    job.say('panel', 'undo');
    expect(searchOf(job.state)?.looks).toEqual([]);
    expect(job.action).toEqual({ kind: 'read', as: 'trend' });
  });

  it('R162: light that keeps changing is waited for twice; the third time its causes are looked for', () => {
    const job = new LookingJob().goOn(isLooking);
    const given: unknown[] = [];
    for (let i = 0; i < 3; i++) {
      job.say('panel', 'wandering');
      given.push(job.action?.kind);
      job.wait(INDICATOR.settleMs);
    }
    expect(given).toEqual(['hold', 'hold', 'check']);
    job.say('panel', 'done');
    job.wait(INDICATOR.settleMs);
    expect(job.action).toEqual({ kind: 'read', as: 'trend' });
  });

  it.each([
    ['falling', ['drift']],
    ['rising', ['drift']],
    ['no signal', ['drift']],
    ['steady', []],
    ['wandering', []],
  ])('that is %s after the acceptance is asked about: %j', (word, ids) => {
    const job = new LookingJob().goOn(isAccepted);
    job.wait(INDICATOR.settleMs);
    job.say('panel', word);
    const result = verified(toJsonLines(job.entries, job.head));
    const drifted = result.ok ? result.findings.filter(({ id }) => id === 'drift') : [];
    expect(drifted.map(({ id }) => id)).toEqual(ids);
    for (const finding of drifted) expect(findingText(finding)).toMatch(/change|differs/);
  });

  it('acceptance without the evidence names looks, not readings, and needs a typed reason', () => {
    const job = new LookingJob().goOn(isLooking);
    job.say('panel', 'steady');
    job.say('panel', 'accept');
    const notice = facts(job, 'notice').at(-1);
    expect(notice?.code).toBe('not-proven');
    expect(notice?.text).toContain('light seen to fall twice');
    expect(notice?.text).not.toContain('reading');
    job.input({ kind: 'override', seat: 'panel', reason: 'the client waits' });
    expect(facts(job, 'accept').at(-1)).toMatchObject({ reading: { kind: 'seen' }, override: {} });
    expect(searchOf(job.state)?.accepted?.backed).toBe(false);
  });

  it('every key of a look says what the engine takes', () => {
    const said = answersTo({ kind: 'read', as: 'trend' }, INDICATOR).map(({ words }) => {
      const understood = understand(words, undefined, {});
      const [intent] = understood.kind === 'understood' ? understood.intents : [];
      return intent?.kind === 'trend' ? intent.trend : intent?.kind === 'reading' ? intent.reading.kind : '';
    });
    expect(said).toEqual(['rising', 'steady', 'falling', 'none', 'saturated', 'wandering']);
  });

  it.each([
    ['rising', ['rising', 'better', 'stronger', 'higher', 'going up']],
    ['falling', ['falling', 'weaker', 'lower', 'dropping']],
    ['steady', ['steady', 'the same', 'no change', 'stable']],
    ['none', ['nothing', 'no light', 'no signal']],
    ['saturated', ['too strong', 'saturated', 'flooded']],
  ])('%s is also said in other words', (meant, words) => {
    for (const word of words) {
      const understood = understand(word, undefined, {});
      const [intent] = understood.kind === 'understood' ? understood.intents : [];
      const what =
        intent?.kind === 'trend' ? intent.trend : intent?.kind === 'reading' ? intent.reading.kind : word;
      expect(what).toBe(meant);
    }
  });

  it.each(['rising', 'falling', 'steady'])(
    '%s that was heard unsurely is asked about by its own word',
    (word) => {
      const job = new LookingJob().goOn(isLooking);
      job.input({ kind: 'words', seat: 'panel', via: 'voice', text: word, confidence: 0.6 });
      expect(lastQuery(job)).toBe(`Did you say: ${word}?`);
      expect(searchOf(job.state)?.looks).toEqual([]);
    },
  );

  it.each([
    ['de', 'heller', 'rising'],
    ['de', 'dunkler', 'falling'],
    ['es', 'más brillante', 'rising'],
    ['es', 'más oscuro', 'falling'],
    ['fr', 'plus clair', 'rising'],
    ['fr', 'plus sombre', 'falling'],
  ] as const)('%s: "%s" is %s', (language, words, trend) => {
    const understood = understand(words, language, {});
    expect(understood).toMatchObject({ kind: 'understood', intents: [{ kind: 'trend', trend }] });
  });
});

describe('the order to look', () => {
  it.each([
    ['look', [], 'Look: steady, nothing or too strong?'],
    ['look', [4], 'Against your last look: rising, falling, steady?'],
    ['hold-steady', [4], 'Look again: still steady?'],
    ['blocking-check', [4], 'Behind the card: nothing, or steady?'],
  ])('by the rule %s, after %j, says against what', (rule, because, say) => {
    expect(lookText({ rule, because }, undefined).say).toBe(say);
    expect(say.split(' ').length).toBeLessThanOrEqual(8);
  });
});

describe('R163: a job in which nobody reads a number', () => {
  const opens = (change: object) => OpenJob.safeParse({ setup: { ...LOOKING, ...change }, device: '' });
  const wrongAt = (change: object) => opens(change).error?.issues.map(({ path }) => path.join('.')) ?? [];

  it('is opened for an alignment', () => {
    expect(wrongAt({})).toEqual([]);
    expect(wrongAt({ scope: 'alignment' })).toEqual([]);
  });

  it.each(['commissioning', 'periodic'])(
    'is not opened for a visit whose tests compare numbers: %s',
    (scope) => {
      expect(wrongAt({ scope })).toEqual(['setup.scope']);
    },
  );

  it.each([
    ['continuous', []],
    ['stepped', []],
    ['fixed', []],
    ['automatic', ['setup.meter.gain']],
  ])('on a detector whose gain is %s: %j', (gain, wrong) => {
    expect(wrongAt({ meter: { ...INDICATOR, gain } })).toEqual(wrong);
    const other = { ...INDICATOR, gain };
    expect(
      OpenJob.safeParse({ setup: { ...LOOKING, meter: other, alone: 'walking' }, device: '' }).success,
    ).toBe(true);
  });
});

/** The same job, once more from its log. */
function replay(job: LookingJob): LookingJob {
  const again = new LookingJob();
  const copy = Object.assign(again, {
    entries: [...job.entries],
    state: job.state,
    head: job.head,
    now: job.now,
  });
  copy.pair = job.pair;
  return copy;
}
