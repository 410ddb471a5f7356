import { describe, expect, it } from 'vitest';
import { ASK, TAKE } from '../../src/conversation/decide.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { COUNTS, ofType, TableJob, VOLTS } from './table.ts';

const FIGURES = 'zero one two three four five six seven eight nine'.split(' ');

describe('reading back', () => {
  it('reads a spoken number back as the meter would show it', () => {
    const job = TableJob.crewed();
    const facts = job.say('panel', 'one forty two');
    expect(ofType(facts, 'reading')[0]?.reading).toEqual(valueReading(142));
    expect(ofType(facts, 'readback')[0]?.text).toBe('142.');
  });

  it('keeps the decimals of the meter, so that 2.5 volts reads back as 2.50', () => {
    const job = TableJob.crewed(VOLTS);
    expect(ofType(job.say('panel', 'two point five'), 'readback')[0]?.text).toBe('2.50.');
  });

  it('asks about a number the meter cannot show, and takes none', () => {
    const job = TableJob.crewed();
    const facts = job.say('panel', 'four hundred');
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.text).toContain('0 to 255');
  });

  it('asks "2.50?" when "two fifty" is said of a meter of five volts', () => {
    const job = TableJob.crewed(VOLTS);
    const facts = job.say('panel', 'two fifty');
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.text).toBe('Did the meter show 2.50?');
    job.say('panel', 'yes');
    expect(job.state.reading?.reading).toEqual(valueReading(2.5));
  });

  it('asks again for words that are no sentence of ours, and moves nothing', () => {
    const job = TableJob.crewed();
    const facts = job.say('panel', 'purple monkey dishwasher');
    expect(facts.map((fact) => fact.type)).toEqual(['said', 'query']);
  });
});

describe('correcting', () => {
  it('"wrong, one two four" replaces the last reading and keeps the first in the log', () => {
    const job = TableJob.crewed();
    job.say('panel', '142');
    const first = job.state.reading?.seq;
    const facts = job.say('panel', 'wrong, one two four');
    expect(ofType(facts, 'reading')).toMatchObject([{ replaces: first }]);
    expect(job.state.reading?.reading).toEqual(valueReading(124));
    expect(ofType(facts, 'readback')[0]?.text).toBe('Corrected: 124, not 142.');
    expect(job.facts[first as number]).toMatchObject({ type: 'reading', reading: valueReading(142) });
  });

  it('a reading is corrected on the screen by naming its entry', () => {
    const job = TableJob.crewed();
    job.say('panel', '50');
    const target = job.state.reading?.seq as number;
    job.input({ kind: 'correct', seat: 'panel', target, text: 'fifteen' });
    expect(job.state.reading?.reading).toEqual(valueReading(15));
  });

  it('refuses to correct an entry that is no reading', () => {
    const job = TableJob.crewed();
    expect(() => job.input({ kind: 'correct', seat: 'panel', target: 0, text: '15' })).toThrow('bad-target');
  });

  it('"undo" takes the last report back and says which', () => {
    const job = TableJob.crewed();
    job.say('panel', '142');
    const facts = job.say('panel', 'undo');
    expect(ofType(facts, 'readback')[0]?.text).toBe('Taken back: 142.');
    expect(job.state.reading).toBeUndefined();
  });

  it('"undo" after a correction brings the first reading back', () => {
    const job = TableJob.crewed();
    job.say('panel', '142');
    job.say('panel', 'wrong, one two four');
    job.say('panel', 'undo');
    expect(job.state.reading?.reading).toEqual(valueReading(142));
  });
});

describe('hearing by voice', () => {
  it('takes what the model is sure of', () => {
    const job = TableJob.crewed();
    expect(ofType(job.hears('panel', 'one forty two', 0.97), 'reading')).toHaveLength(1);
  });

  it('asks when it is not sure enough, and asks for it again when it has hardly an idea', () => {
    const heardAt = (confidence: number) => {
      const facts = TableJob.crewed().hears('panel', 'one forty two', confidence);
      return [ofType(facts, 'reading').length, ofType(facts, 'query')[0]?.text];
    };
    expect(heardAt(TAKE)).toEqual([1, undefined]);
    expect(heardAt(TAKE - 0.01)).toEqual([0, 'Did you say: 142?']);
    expect(heardAt(ASK)).toEqual([0, 'Did you say: 142?']);
    expect(heardAt(ASK - 0.01)).toEqual([0, 'Say again, please.']);
  });

  it('adds up different words that mean the same', () => {
    const job = TableJob.crewed();
    const facts = job.hears('panel', 'one forty two', 0.5, [['one four two', 0.45]]);
    expect(ofType(facts, 'reading')).toHaveLength(1);
  });

  it('asks "fifteen or fifty" instead of choosing, and takes the answer', () => {
    const job = TableJob.crewed();
    const facts = job.hears('panel', 'fifty', 0.55, [['fifteen', 0.4]]);
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.question).toMatchObject({ kind: 'which-value', options: [50, 15] });
    job.say('panel', 'fifteen');
    expect(job.state.reading?.reading).toEqual(valueReading(15));
    expect(job.state.query).toBeUndefined();
  });

  it.each([
    [50, 'fifty', 15, 'fifteen'],
    [13, 'thirteen', 30, 'thirty'],
    [90, 'ninety', 19, 'nineteen'],
  ])(
    'asks of %d, when it may be its confusable, both ways of saying each',
    (value, word, other, otherWord) => {
      const job = TableJob.crewed();
      const facts = job.hears('panel', word, 0.55, [[otherWord, 0.4]]);
      const asked = `${value}, ${word}, or ${other}, ${otherWord}? Say it figure by figure.`;
      expect(ofType(facts, 'query')[0]?.text).toBe(asked);
      job.hears('panel', [...String(other)].map((figure) => FIGURES[Number(figure)]).join(' '), 0.99);
      expect(job.state.reading?.reading).toEqual(valueReading(other));
    },
  );

  it('asks though it is sure of "thirteen", while "thirty" is not ruled out', () => {
    const job = TableJob.crewed();
    const facts = job.hears('panel', 'thirteen', 0.98, [['thirty', 0.01]]);
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.question).toMatchObject({ options: [13, 30] });
  });

  it('asks only about what is worth asking', () => {
    const job = TableJob.crewed();
    const facts = job.hears('panel', 'one forty two', 0.6, [
      ['one forty', 0.2],
      ['forty two', 0.01],
    ]);
    expect(ofType(facts, 'query')[0]?.text).toBe('142, or 140, one forty? Say which.');
  });

  it('a doubtful single reading is taken on "yes", and on "no" asked again', () => {
    const yes = TableJob.crewed();
    yes.hears('panel', 'fifty', 0.6);
    yes.say('panel', 'yes');
    expect(yes.state.reading?.reading).toEqual(valueReading(50));

    const no = TableJob.crewed();
    no.hears('panel', 'fifty', 0.6);
    no.say('panel', 'no');
    expect(no.state.reading).toBeUndefined();
    expect(no.state.query?.text).toContain('again');
  });

  it('asks to say it again when nothing is likely enough', () => {
    const job = TableJob.crewed();
    const facts = job.hears('panel', 'fifty', 0.1);
    expect(ofType(facts, 'query')[0]?.text).toBe('Say again, please.');
  });

  it('stops at once though it is not quite sure', () => {
    const job = TableJob.crewed();
    job.hears('emitter', 'stop', 0.5);
    expect(job.state.stopped).toBe(true);
    expect(job.state.instruction).toBeUndefined();
  });
});

describe('instructions', () => {
  it('are given only when both phones are in their seats', () => {
    const job = new TableJob();
    job.open(COUNTS);
    job.input({ kind: 'seated', seat: 'panel', device: '', takeover: false });
    expect(job.state.instruction).toBeUndefined();
    job.input({ kind: 'seated', seat: 'emitter', device: '', takeover: false });
    expect(job.state.instruction).toBeDefined();
  });

  it('say the cautions first', () => {
    const job = TableJob.crewed();
    const types = job.facts.map((fact) => fact.type);
    expect(types.indexOf('notice')).toBeLessThan(types.indexOf('instruction'));
  });

  it('lapse when nobody answers, and return when somebody speaks', () => {
    const job = TableJob.crewed();
    const lapsed = job.state.instruction?.seq;
    job.wait(60 * 60_000);
    expect(job.state.instruction).toBeUndefined();
    expect(ofType(job.facts, 'withdrawn')).toMatchObject([{ instruction: lapsed, why: 'expired' }]);
    job.say('panel', 'go on');
    expect(job.state.instruction).toBeDefined();
  });

  it('rest while the crew waits', () => {
    const job = TableJob.crewed();
    job.say('emitter', 'wait');
    expect(job.state.instruction).toBeUndefined();
    job.say('panel', '142');
    expect(job.state.instruction).toBeUndefined();
    job.say('emitter', 'go on');
    expect(job.state.instruction).toBeDefined();
  });
});

/** Brings a fresh job to its first turn. */
function toFirstTurn(): TableJob {
  const job = TableJob.crewed();
  for (let i = 0; i < 6 && job.action?.kind !== 'turn'; i++) {
    if (job.action?.kind === 'gain' || job.action?.kind === 're-aim') job.say('emitter', 'done');
    job.say('panel', '140');
    job.wait(5_000);
  }
  expect(job.action?.kind).toBe('turn');
  return job;
}

describe('turning', () => {
  it('"done" records the turn that was asked for, once', () => {
    const job = toFirstTurn();
    const asked = job.turn;
    const facts = job.say('emitter', 'done', asked.seq);
    expect(ofType(facts, 'move')).toMatchObject([
      { axis: asked.axis, eighths: asked.eighths, instruction: asked.seq },
    ]);
    expect(ofType(job.say('emitter', 'done', asked.seq), 'move')).toEqual([]);
  });

  it('a "done" that arrives late is credited to the turn it was said of', () => {
    const job = toFirstTurn();
    const asked = job.turn;
    job.say('panel', 'saturated');
    job.wait(5_000);
    const facts = job.say('emitter', 'done', asked.seq);
    expect(ofType(facts, 'move')).toMatchObject([{ instruction: asked.seq }]);
  });

  it('a reading from before the turn that arrives after it is asked for again', () => {
    const job = toFirstTurn();
    const asked = job.turn;
    job.say('emitter', 'done', asked.seq);
    const facts = job.say('panel', '151', asked.seq);
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.text).toContain('now');
  });

  it('"done, one five one" in one breath is the turn and the reading after it', () => {
    const job = toFirstTurn();
    const facts = job.say('panel', 'done, one five one', job.turn.seq);
    expect(ofType(facts, 'move')).toHaveLength(1);
    expect(ofType(facts, 'reading')).toHaveLength(1);
  });

  it('"wrong way" records the turn as made the other way', () => {
    const job = toFirstTurn();
    const asked = job.turn;
    job.say('emitter', 'done', asked.seq);
    const facts = job.say('emitter', 'wrong way');
    expect(ofType(facts, 'move')).toMatchObject([
      { axis: asked.axis, eighths: -asked.eighths, replaces: expect.any(Number) },
    ]);
  });

  it('a report that differs from what was asked is taken as reported', () => {
    const job = toFirstTurn();
    const facts = job.say('emitter', 'vertical half a turn anticlockwise');
    expect(ofType(facts, 'move')).toMatchObject([{ axis: 'vertical', eighths: -4 }]);
  });

  it('asks which way when only "left" was said', () => {
    const job = toFirstTurn();
    const facts = job.say('emitter', 'turned the vertical a quarter left');
    expect(ofType(facts, 'move')).toEqual([]);
    expect(ofType(facts, 'query')[0]?.text).toContain('clockwise or anticlockwise');
  });
});

describe('accepting', () => {
  it('is refused with what is missing, and the refusal stands in the log', () => {
    const job = toFirstTurn();
    const facts = job.say('panel', 'accept');
    expect(ofType(facts, 'accept')).toEqual([]);
    expect(ofType(facts, 'notice')).toMatchObject([{ code: 'not-proven' }]);
  });

  it('against missing evidence needs a typed reason and is marked for ever', () => {
    const job = toFirstTurn();
    const facts = job.input({ kind: 'override', seat: 'panel', reason: 'Access withdrawn, see site diary' });
    const [accept] = ofType(facts, 'accept');
    expect(accept?.override?.reason).toBe('Access withdrawn, see site diary');
    expect(accept?.override?.missing.length).toBeGreaterThan(0);
  });

  it('an override without any reading is refused', () => {
    const job = TableJob.crewed();
    expect(() => job.input({ kind: 'override', seat: 'panel', reason: 'because' })).toThrow('no reading');
  });
});

it('"no signal" is a reading of its own, never a zero', () => {
  const job = TableJob.crewed();
  job.say('panel', 'no signal');
  expect(job.state.reading?.reading).toEqual(NO_SIGNAL);
});
