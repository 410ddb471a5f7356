import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answer } from '../../src/conversation/answer.ts';
import { Composer } from '../../src/conversation/composer.ts';
import type { Intent } from '../../src/grammar/intent.ts';
import type { Fact } from '../../src/model/facts.ts';
import { valueReading } from '../../src/model/reading.ts';
import { askedAgain } from '../../src/phrases/questions.ts';
import { countedOf } from '../../src/visit/state.ts';
import { COUNTS, ofType, TableJob } from './table.ts';

/** A job whose peak along one adjuster is known, so that 77 there is a surprise: it is asked about. */
function doubted(said = '77'): TableJob {
  const job = TableJob.crewed();
  const at = (eighths: number) => Math.round(150 * 10 ** (-0.006 * (eighths - 4) ** 2));
  job.say('panel', String(at(0)));
  job.wait(5_000);
  for (const [by, to] of [
    [2, 2],
    [2, 4],
    [2, 6],
    [2, 8],
  ]) {
    job.say('emitter', `horizontal ${by}/8 turn clockwise`);
    job.wait(5_000);
    job.say('panel', String(at(to as number)));
    job.wait(1_000);
  }
  job.say('emitter', 'horizontal half a turn anticlockwise');
  job.wait(5_000);
  job.say('panel', said);
  return job;
}

const question = (job: TableJob): string | undefined =>
  job.action?.kind === 'ask' ? job.state.instruction?.say : undefined;

describe('a reading that is doubted', () => {
  it('is asked about', () => {
    expect(question(doubted())).toBe('Reading right? Say yes, or say it again.');
  });

  it.each<[string, number, boolean]>([
    ['the same number said again is a yes', 77, true],
    ['a number at the meter’s tolerance above is', 77 + COUNTS.tolerance, true],
    ['a number at the meter’s tolerance below is', 77 - COUNTS.tolerance, true],
    ['one count more is another reading, and no yes', 77 + COUNTS.tolerance + 1, false],
    ['one count less is another reading, and no yes', 77 - COUNTS.tolerance - 1, false],
  ])('%s', (_, again, isYes) => {
    const job = doubted();
    const about = job.state.reading?.seq as number;
    const facts = job.say('panel', String(again));
    expect(ofType(facts, 'confirm').map(({ target }) => target)).toEqual(isYes ? [about] : []);
    expect(ofType(facts, 'reading')).toMatchObject([{ reading: valueReading(again) }]);
    // The other number is asked about once more, with another way out; the same one is not asked about again.
    expect(question(job)).toBe(
      isYes
        ? 'Did you turn: horizontal, half a turn clockwise?'
        : 'Reading right? Say yes, or say it again. Or type it, or say "not sure".',
    );
  });

  it('is settled by the first repetition, of no signal too', () => {
    const job = doubted('no signal');
    expect(question(job)).toBeDefined();
    job.say('panel', 'no signal');
    // An earlier turn may be asked about, the reading is not.
    expect(question(job) ?? '').not.toContain('Reading right?');
  });

  it('is taken back by "not sure", and the meter is read anew', () => {
    const job = doubted();
    const about = job.state.reading?.seq as number;
    const facts = job.say('panel', 'not sure');
    expect(ofType(facts, 'retract')).toMatchObject([{ target: about, why: 'correction' }]);
    expect(job.action?.kind).toBe('read');
  });
});

/** What a crew might say to anything, right or wrong. */
const UTTERANCES = [
  'yes',
  'no',
  'done',
  '77',
  '100',
  '140',
  'about fifty',
  'four hundred',
  'no signal',
  'saturated',
  'rising',
  'steady',
  'banana',
  'not sure',
  'wrong way',
  'wrong screw',
  'went too far',
  "I didn't turn it",
  'someone knocked it',
  'turned it left',
  'turned the vertical',
  'half',
  'stuck',
  "can't",
  'undo',
  'blocked',
  'clear',
  'gain down',
  'other adjuster',
  'wrong, 90',
  'no, 90',
  'wait',
  'go on',
  'accept',
  'start',
] as const;

describe('a question', () => {
  it('never comes twice in a row in the same words, and from the second time on names another way out', () => {
    const turn = fc.record({
      seat: fc.constantFrom('panel' as const, 'emitter' as const),
      text: fc.constantFrom(...UTTERANCES),
      belief: fc.constantFrom(undefined, 0.2, 0.6, 0.93, 0.99),
      wait: fc.constantFrom(0, 1_000, 6_000),
      /** People repeat themselves when nothing happens. */
      times: fc.integer({ min: 1, max: 4 }),
    });
    fc.assert(
      fc.property(fc.boolean(), fc.array(turn, { maxLength: 12 }), (fresh, turns) => {
        const job = fresh ? TableJob.crewed() : doubted();
        for (const { seat, text, belief, wait, times } of turns) {
          for (let i = 0; i < times; i++) {
            if (belief === undefined) job.say(seat, text);
            else job.hears(seat, text, belief);
          }
          job.wait(wait);
        }
        expect(repeated(job.facts)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('about words that were heard is answered by saying them again', () => {
    const job = TableJob.crewed();
    job.hears('panel', 'one forty two', 0.6);
    expect(job.state.query?.text).toBe('Did you say: 142?');
    job.hears('panel', 'one four two', 0.6);
    expect(job.state.reading?.reading).toEqual(valueReading(142));
  });

  it('is not, if what is said again is likely something else', () => {
    const job = TableJob.crewed();
    job.hears('panel', 'thirteen', 0.98, [['thirty', 0.01]]);
    job.hears('panel', 'thirteen', 0.98, [['thirty', 0.01]]);
    expect(job.state.reading).toBeUndefined();
  });

  it('that nobody can answer is left out', () => {
    const job = TableJob.crewed();
    job.say('panel', 'about fifty');
    const facts = job.say('panel', 'not sure');
    expect(facts.map(({ type }) => type)).toEqual(['said', 'readback']);
    expect([job.state.query, job.state.reading]).toEqual([undefined, undefined]);
  });
});

describe('"Did you turn this, or that?"', () => {
  const OPTIONS = [
    { axis: 'horizontal', eighths: 4 },
    { axis: 'vertical', eighths: -4 },
    { axis: 'vertical', eighths: -8 },
  ] as const;
  const ASKED = 'asked which';
  /** What comes of an answer: the turn that counts now, or that it is asked which. */
  const outcomeOf = (intents: Intent[], ago?: number): string => {
    const job = doubted();
    const about = countedOf(job.state).findLast(({ type }) => type === 'move')?.seq as number;
    const composer = new Composer(job.state, job.now);
    const question = { kind: 'which-move' as const, about, options: [...OPTIONS], ...(ago && { ago }) };
    const left = answer(composer, question, intents, { seat: 'emitter', said: about, text: '' });
    if (left.length > 0) return 'a new turn';
    const facts = composer.drafts.map(({ fact }) => fact);
    const [turn] = ofType(facts, 'move');
    if (turn) return `${turn.axis} ${turn.eighths}${turn.replaces === about ? '' : ', anew'}`;
    return ofType(facts, 'query').length > 0 ? ASKED : facts.map(({ type }) => type).join();
  };
  const moved = (said: Omit<Extract<Intent, { kind: 'moved' }>, 'kind'>): Intent => ({
    kind: 'moved',
    ...said,
  });

  it.each<[string, Intent[], string]>([
    ['yes to more than one is no answer', [{ kind: 'yes' }], ASKED],
    ['the adjuster alone, where one fits', [moved({ axis: 'horizontal' })], 'horizontal 4'],
    ['the adjuster alone, where two fit', [moved({ axis: 'vertical' })], ASKED],
    ['how far, where one fits', [moved({ eighths: 8 })], 'vertical -8'],
    ['how far, where two fit', [moved({ eighths: 4 })], ASKED],
    ['which way, where one fits', [moved({ way: 'clockwise' })], 'horizontal 4'],
    ['all of it', [moved({ axis: 'vertical', eighths: 4, way: 'anticlockwise' })], 'vertical -4'],
    [
      'another turn is what was turned',
      [moved({ axis: 'vertical', eighths: 4, way: 'clockwise' })],
      'vertical 4, anew',
    ],
    ['no: it stands', [{ kind: 'no' }], 'confirm'],
    ['it was not turned', [{ kind: 'not-turned' }], 'retract,readback'],
  ])('%s', (_, intents, outcome) => {
    expect(outcomeOf(intents)).toBe(outcome);
  });

  it.each<[string, Intent[], string]>([
    ['the adjuster alone answers', [moved({ axis: 'horizontal' })], 'horizontal 4'],
    [
      'a turn told in full is a new one',
      [moved({ axis: 'horizontal', eighths: 4, way: 'clockwise' })],
      'a new turn',
    ],
  ])('of long ago: %s', (_, intents, outcome) => {
    expect(outcomeOf(intents, 3)).toBe(outcome);
  });
});

describe('"Did you turn it so?", of a turn as it was reported', () => {
  /** What comes of an answer, where the crew reported `made`; `asksWhich`: they said no, and were asked for the turn. */
  const outcomeOf = (
    intents: Intent[],
    { ago, asksWhich }: { ago?: number; asksWhich?: true } = {},
  ): string => {
    const job = doubted();
    const made = countedOf(job.state).findLast((fact) => fact.type === 'move');
    if (made?.type !== 'move') throw new Error('nothing was turned');
    const { seq: about, axis, eighths } = made;
    const question = {
      kind: 'which-move' as const,
      about,
      options: [{ axis, eighths }],
      ...(ago && { ago }),
    };
    const composer = new Composer(job.state, job.now);
    if (asksWhich) composer.ask(about, 'How far?', { meant: question });
    const start = composer.drafts.length;
    const left = answer(composer, question, intents, { seat: 'emitter', said: about, text: '' });
    if (left.length > 0) return 'a new turn';
    const facts = composer.drafts.slice(start).map(({ fact }) => fact);
    const [turn] = ofType(facts, 'move');
    if (turn) {
      expect(turn.replaces).toBe(about);
      const isAxis = turn.axis === axis ? 'this' : 'the other';
      return `${isAxis} ${turn.eighths / eighths}`;
    }
    return facts.map(({ type }) => type).join();
  };
  const way = (of: 1 | -1) => {
    const made = countedOf(doubted().state).findLast((fact) => fact.type === 'move');
    const sign = made?.type === 'move' ? Math.sign(made.eighths) : 1;
    return of * sign > 0 ? ('clockwise' as const) : ('anticlockwise' as const);
  };
  const other = (): 'horizontal' | 'vertical' => {
    const made = countedOf(doubted().state).findLast((fact) => fact.type === 'move');
    return made?.type === 'move' && made.axis === 'horizontal' ? 'vertical' : 'horizontal';
  };

  it.each<[string, Intent[], string]>([
    ['yes: it stands', [{ kind: 'yes' }], 'confirm'],
    ['no: which then?', [{ kind: 'no' }], 'query'],
    ['not sure: nobody knows where the screws are', [{ kind: 'unsure' }], 'disturbed,readback'],
    ['it was not turned', [{ kind: 'not-turned' }], 'retract,readback'],
    ['the other way', [{ kind: 'no' }, { kind: 'moved', way: way(-1) }], 'this -1'],
    ['the other adjuster', [{ kind: 'no' }, { kind: 'moved', axis: other() }], 'the other 1'],
    ['said as it was reported', [{ kind: 'moved', way: way(1) }], 'confirm'],
  ])('%s', (_, intents, outcome) => {
    expect(outcomeOf(intents)).toBe(outcome);
  });

  it('of long ago: a turn told without a no is a new one, unless it was asked for', () => {
    const told: Intent = { kind: 'moved', axis: other(), eighths: 2, way: 'clockwise' };
    expect(outcomeOf([told], { ago: 3 })).toBe('a new turn');
    expect(outcomeOf([{ kind: 'no' }, told], { ago: 3 })).toContain('the other');
    expect(outcomeOf([told], { ago: 3, asksWhich: true })).toContain('the other');
    expect(outcomeOf([{ kind: 'yes' }], { ago: 3 })).toBe('confirm');
  });
});

/** Pairs of questions in a row, with no other order between, that have the same words or no way out. */
function repeated(facts: readonly Fact[]): string[] {
  const wrong: string[] = [];
  let before: { text: string; base: string; times: number } | undefined;
  for (const fact of facts) {
    if (fact.type === 'instruction' && !['ask', 'hold', 'read'].includes(fact.advice.action.kind))
      before = undefined;
    const isAsk = fact.type === 'instruction' && fact.advice.action.kind === 'ask';
    if (fact.type !== 'query' && !isAsk) continue;
    const text = fact.type === 'query' ? fact.text : fact.say;
    if (before && text.startsWith(before.base)) {
      if (text === before.text || text === before.base) wrong.push(text);
      before = { text, base: before.base, times: before.times + 1 };
    } else before = { text, base: text, times: 1 };
  }
  return wrong;
}

it('the ways out are two, and take turns', () => {
  const asked = [0, 1, 2, 3].map((times) => askedAgain('Which?', times));
  expect(new Set(asked).size).toBe(3);
  expect(asked[1]).toBe(asked[3]);
});
