import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import { searchOf } from '../../src/visit/search.ts';
import { COUNTS, ofType, TableJob } from './table.ts';

/** A fresh job at its first turn. */
function atTurn(): TableJob {
  const job = TableJob.crewed();
  for (let i = 0; i < 6 && job.action?.kind !== 'turn'; i++) {
    if (job.action?.kind === 'gain' || job.action?.kind === 're-aim') job.say('emitter', 'done');
    job.say('panel', '140');
    job.wait(5_000);
  }
  return job;
}

/** The same after "done". */
function turned(): TableJob {
  const job = atTurn();
  job.say('emitter', 'done', job.turn.seq);
  return job;
}

const readbacks = (facts: Fact[]) => ofType(facts, 'readback').map(({ text }) => text);
const queries = (facts: Fact[]) => ofType(facts, 'query').map(({ text }) => text);
const at = (job: TableJob) => searchOf(job.state)?.turned;

describe('a turn that was not made as asked', () => {
  it('"I didn’t turn it" before it was reported records nothing, and the order stands', () => {
    const job = atTurn();
    const { seq } = job.turn;
    const facts = job.say('emitter', "I didn't turn it", seq);
    expect(facts.map(({ type }) => type)).toEqual(['said', 'readback']);
    expect(job.turn.seq).toBe(seq);
  });

  it('"I didn’t turn it" after it was reported takes the turn back', () => {
    const job = turned();
    const facts = job.say('emitter', "I didn't turn it");
    expect(ofType(facts, 'retract')).toHaveLength(1);
    expect(at(job)).toEqual({ horizontal: 0, vertical: 0 });
  });

  it('"wrong screw" moves the turn to the other adjuster', () => {
    const job = turned();
    job.say('emitter', 'wrong screw, sorry');
    expect(at(job)).toEqual({ horizontal: 0, vertical: 6 });
    const before = atTurn();
    before.say('emitter', 'I turned the wrong one', before.turn.seq);
    expect(at(before)).toEqual({ horizontal: 0, vertical: 6 });
  });

  it('"wrong way, sorry" turns its sign around', () => {
    const job = turned();
    job.say('emitter', 'wrong way, sorry');
    expect(at(job)).toEqual({ horizontal: -6, vertical: 0 });
  });

  it('"half a turn clockwise, done" is one turn', () => {
    const job = atTurn();
    const facts = job.say('emitter', 'half a turn clockwise, done', job.turn.seq);
    expect(ofType(facts, 'move')).toMatchObject([{ axis: 'horizontal', eighths: 4 }]);
  });

  it('"went too far" asks how far; no reading is taken before that is known', () => {
    const job = atTurn();
    expect(queries(job.say('emitter', 'went too far'))).toEqual([expect.stringContaining('How far')]);
    const facts = job.say('panel', '120');
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(queries(facts)).toEqual([expect.stringContaining('not sure')]);
    job.say('emitter', 'horizontal one turn clockwise');
    expect(at(job)).toEqual({ horizontal: 8, vertical: 0 });
    expect(ofType(job.say('panel', '120'), 'reading')).toHaveLength(1);
  });

  it('of unknown size makes the search start again from here', () => {
    const job = turned();
    const facts = job.say('emitter', 'lost count');
    expect(ofType(facts, 'disturbed')).toMatchObject([{ why: 'uncounted-turn' }]);
    expect(searchOf(job.state)?.samples).toEqual([]);
    const before = atTurn();
    before.say('emitter', 'lost count');
    expect(ofType(before.say('emitter', "I don't know"), 'disturbed')).toHaveLength(1);
  });
});

it('"someone knocked it" makes the search start again from here, and ends an acceptance', () => {
  const job = turned();
  job.say('panel', '120');
  job.input({ kind: 'override', seat: 'panel', reason: 'For this test only' });
  expect(searchOf(job.state)?.accepted).toBeDefined();
  const facts = job.say('emitter', 'someone knocked it');
  expect(ofType(facts, 'disturbed')).toMatchObject([{ why: 'knocked' }]);
  expect(searchOf(job.state)).toMatchObject({ samples: [], accepted: undefined });
});

describe('a screw that is stuck', () => {
  it('is left alone: the other one is turned first, then it must be freed', () => {
    const job = atTurn();
    const { seq, axis } = job.turn;
    expect(axis).toBe('horizontal');
    const facts = job.say('emitter', 'stuck', seq);
    expect(readbacks(facts)).toEqual(['Heard: the horizontal adjuster is stuck.']);
    expect(job.turn.axis).toBe('vertical');
    job.say('emitter', 'stuck', job.turn.seq);
    expect(job.action).toEqual({ kind: 'check', causes: ['horizontal-stuck', 'vertical-stuck'] });
    expect(job.state.instruction?.say).toContain('stop and note it');
    job.say('emitter', 'done', job.state.instruction?.seq);
    job.wait(5_000);
    job.say('panel', '140');
    expect(job.action?.kind).toBe('turn');
  });

  it.each(["can't reach it", "can't do it"])('"%s" changes the plan as well', (words) => {
    const job = atTurn();
    job.say('emitter', words, job.turn.seq);
    expect(job.turn.axis).toBe('vertical');
  });

  it('at its end of travel is turned the other way', () => {
    const job = atTurn();
    const { seq, axis, eighths } = job.turn;
    job.say('emitter', 'end of travel', seq);
    expect(job.turn).toMatchObject({ axis, eighths: -eighths });
  });

  it('at both ends with nothing left to turn is aimed again', () => {
    const job = atTurn();
    for (let i = 0; i < 4; i++) job.say('emitter', 'end of travel', job.turn.seq);
    expect(job.action).toEqual({ kind: 're-aim' });
    expect(job.state.instruction?.advice.rule).toBe('end-of-travel');
  });
});

describe('an order that cannot be carried out', () => {
  const needed = (facts: Fact[]) => ofType(facts, 'notice').filter(({ code }) => code === 'needed');

  /** Aimed, and no signal: full gain is asked for. */
  const atGain = (): TableJob => {
    const job = TableJob.crewed();
    for (let i = 0; i < 4 && job.action?.kind !== 'gain'; i++) {
      if (job.action?.kind === 're-aim') job.say('emitter', 'done');
      job.wait(5_000);
      job.say('panel', 'no signal');
    }
    expect(job.action).toEqual({ kind: 'gain', change: 'full' });
    return job;
  };

  it('is not given again where there is another way: without more gain the search goes on', () => {
    const job = atGain();
    const facts = job.say('emitter', "can't do it", job.state.instruction?.seq);
    expect(readbacks(facts)).toEqual(['Heard: the gain could not be set.']);
    expect(job.action?.kind).toBe('turn');
    job.say('emitter', 'done', job.turn.seq);
    job.wait(5_000);
    job.say('panel', 'no signal');
    expect(job.action?.kind).toBe('turn');
  });

  it('waits where there is none, and says how to go on', () => {
    const job = atTurn();
    for (let i = 0; i < 4; i++) job.say('emitter', 'end of travel', job.turn.seq);
    const order = job.state.instruction;
    expect(order?.advice.action).toEqual({ kind: 're-aim' });
    const facts = job.say('emitter', "can't reach it", order?.seq);
    expect(needed(facts)).toHaveLength(1);
    expect(ofType(facts, 'instruction')).toEqual([]);
    expect([job.state.paused, job.state.held, job.action]).toEqual([true, false, undefined]);
    job.say('emitter', 'go on');
    expect(job.action).toEqual({ kind: 're-aim' });
  });

  it('to read is no word about the aim: the crew still aims before anything is turned', () => {
    const job = TableJob.crewed();
    expect(job.action?.kind).toBe('read');
    expect(needed(job.say('panel', "can't do it", job.state.instruction?.seq))).toHaveLength(1);
    job.say('panel', 'go on');
    job.say('panel', '140');
    job.wait(5_000);
    job.say('panel', '140');
    expect(job.state.instruction?.advice.rule).toBe('aim-first');
  });

  it('to aim is another matter: then the search begins without', () => {
    const job = TableJob.crewed();
    job.say('panel', '140');
    job.wait(5_000);
    job.say('panel', '140');
    expect(job.state.instruction?.advice.rule).toBe('aim-first');
    job.say('emitter', "can't", job.state.instruction?.seq);
    expect(job.action?.kind).toBe('turn');
  });
});

describe('a list of causes that comes again', () => {
  it('names another way out, and the first time does not', () => {
    const job = atTurn();
    const said = () => job.state.instruction?.say ?? '';
    const stuckAgain = () => {
      for (let i = 0; i < 2; i++) job.say('emitter', 'stuck', job.turn.seq);
      expect(job.action).toEqual({ kind: 'check', causes: ['horizontal-stuck', 'vertical-stuck'] });
    };
    stuckAgain();
    const first = said();
    expect(first).not.toContain('Or say "stop"');
    expect(job.say('emitter', "can't do it", job.state.instruction?.seq)).toContainEqual(
      expect.objectContaining({ type: 'notice', code: 'needed' }),
    );
    job.say('emitter', 'go on');
    expect(said()).toBe(`${first} Or say "stop", and note it.`);
  });
});

describe('a number', () => {
  it.each<[string, string[], string]>([
    ['reads back alone at first', ['104'], '104.'],
    ['reads back with its rise', ['98', '104'], '104, up 6.'],
    ['reads back with its fall', ['104', '98'], '98, down 6.'],
    ['reads back the same', ['104', '104'], '104, the same.'],
    ['says nothing of a change after no signal', ['no signal', '104'], '104.'],
    ['says nothing of a change over a gain change', ['98', 'gain down', '104'], '104.'],
    ['says the change over a turn', ['98', 'horizontal half a turn clockwise', '104'], '104, up 6.'],
  ])('%s', (_, said, readback) => {
    const job = TableJob.crewed();
    let facts: Fact[] = [];
    for (const words of said) {
      facts = job.say(/gain|turn/.test(words) ? 'emitter' : 'panel', words);
      job.wait(5_000);
    }
    expect(readbacks(facts)).toEqual([readback]);
  });

  it('that is only about right is asked for, and is no reading until somebody says it', () => {
    const job = TableJob.crewed();
    const facts = job.say('panel', 'fifty or so');
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(queries(facts)).toEqual(['Did the meter show 50?']);
    expect(ofType(job.say('panel', 'about fifty'), 'reading')).toEqual([]);
    job.say('panel', 'yes');
    expect(job.state.reading?.reading).toEqual(valueReading(50));
  });

  it('is wanted from a crew that only says which way it goes, at the second such answer', () => {
    const job = TableJob.crewed();
    expect(queries(job.say('panel', 'rising'))).toEqual([]);
    job.wait(6_000);
    expect(queries(job.say('panel', 'still rising'))).toEqual([
      expect.stringContaining('A number is needed'),
    ]);
    job.say('panel', '120');
    expect(queries(job.say('panel', 'steady'))).toEqual([]);
  });
});

describe('a meter of eight bars', () => {
  const BARS: MeterProfile = {
    ...COUNTS,
    name: 'Eight bars',
    unit: 'bars',
    min: 0,
    max: 8,
    lostAt: 0,
    bandLow: 4,
    bandHigh: 6,
    saturatedAt: 8,
    tolerance: 0.5,
  };
  const crewed = () => {
    const job = new TableJob();
    job.input({
      kind: 'open',
      setup: { site: 'Quayside Hall 3', pair: 'B2', meter: BARS, adjusters: NEUTRAL_ADJUSTERS },
    });
    for (const seat of ['panel', 'emitter'] as const)
      job.input({ kind: 'seated', seat, device: '', takeover: false });
    return job;
  };

  it.each(['four bars', '4 bars', 'four', "it's four bars", 'four bar'])('reads four from "%s"', (words) => {
    const job = crewed();
    job.say('panel', words);
    expect(job.state.reading?.reading).toEqual(valueReading(4));
  });

  it.each<[string, string]>([
    ['42', 'Heard 42, but this meter only shows 0 to 8. What does it show?'],
    ['four point five', 'Heard 4.5, but this meter shows steps of 1. What does it show?'],
    ['four volts', 'This meter shows bars. What does it show?'],
    ['four percent', 'This meter shows bars. What does it show?'],
  ])('says of "%s" why not', (words, text) => {
    const facts = crewed().say('panel', words);
    expect(ofType(facts, 'reading')).toEqual([]);
    expect(queries(facts)).toEqual([text]);
  });
});

it('"why?" is answered with the reason of the present order, and only then', () => {
  const job = atTurn();
  const facts = job.say('emitter', 'why?');
  expect(readbacks(facts)).toEqual([job.state.instruction?.why]);
});

describe('words that say where the beam goes, and not what is written on the screw', () => {
  it.each([
    ['upright', 'pan half a turn clockwise', 'horizontal'],
    ['upside-down', 'side to side half a turn clockwise', 'horizontal'],
    ['top-left', 'side to side half a turn clockwise', undefined],
    ['top-right', 'pan half a turn clockwise', undefined],
    ['top-left', 'tilt half a turn clockwise', undefined],
    ['top-right', 'horizontal half a turn clockwise', 'horizontal'],
    ['top-left', 'vertical half a turn clockwise', 'vertical'],
  ] as const)('on a unit that hangs %s, "%s"', (mounting, words, axis) => {
    const job = atTurn();
    job.input({ kind: 'mounted', seat: 'emitter', mounting });
    const facts = job.say('emitter', words, job.turn.seq);
    expect(ofType(facts, 'move').map((move) => move.axis)).toEqual(axis ? [axis] : []);
    expect(queries(facts)).toEqual(axis ? [] : ['Which adjuster was turned: horizontal or vertical?']);
  });
});

describe('what is said aloud once', () => {
  const holds = (job: TableJob) =>
    ofType(job.facts, 'instruction').filter(
      ({ advice: { action } }) => action.kind === 'hold' && action.reason === 'settling',
    );

  it('is that it settles: the first time in words, then quietly, and anew for whoever comes new', () => {
    const job = turned();
    expect(holds(job).map(({ quiet }) => quiet)).toEqual([undefined, true]);
    expect(holds(job)[1]?.show).toBe('Hold: settling');
    job.input({ kind: 'seated', seat: 'emitter', device: 'other', takeover: true });
    job.wait(5_000);
    job.say('panel', '125');
    job.say('emitter', 'horizontal a quarter turn clockwise');
    expect(holds(job).map(({ quiet }) => quiet)).toEqual([undefined, true, undefined]);
  });

  it('is the caution of the laser, before the first aim by eye', () => {
    const job = TableJob.crewed();
    for (let i = 0; i < 3 && job.action?.kind !== 're-aim'; i++) {
      if (job.action?.kind === 'gain') job.say('emitter', 'done');
      job.wait(5_000);
      job.say('panel', 'no signal');
      job.wait(5_000);
    }
    expect(job.action?.kind).toBe('re-aim');
    const laser = job.facts.filter((fact) => fact.type === 'notice' && fact.code === 'laser');
    expect(laser).toHaveLength(1);
    const last = job.facts.at(-1);
    expect(last).toMatchObject({ type: 'instruction', advice: { action: { kind: 're-aim' } } });
    job.say('emitter', 'wait');
    job.say('emitter', 'go on');
    expect(job.action?.kind).toBe('re-aim');
    expect(job.facts.filter((fact) => fact.type === 'notice' && fact.code === 'laser')).toHaveLength(1);
  });
});

describe('an order for the emitter, while its phone is away', () => {
  /** At the last reading before the next turn, with the emitter's phone gone. */
  const away = () => {
    const job = turned();
    job.wait(5_000);
    expect(job.action?.kind).toBe('read');
    job.input({ kind: 'link', seat: 'emitter', online: false });
    return { job, facts: job.say('panel', '120') };
  };
  const back = (job: TableJob) => job.input({ kind: 'link', seat: 'emitter', online: true });
  const orders = (facts: Fact[]) => ofType(facts, 'instruction').map(({ advice }) => advice.action.kind);

  it('is held: it is not given, and the panel is told why', () => {
    const { job, facts } = away();
    expect(orders(facts)).toEqual([]);
    expect(ofType(facts, 'pause')).toEqual([{ type: 'pause', why: 'emitter-away' }]);
    expect(ofType(facts, 'notice').map(({ code }) => code)).toEqual(['held']);
    expect([job.state.held, job.state.paused, job.state.instruction]).toEqual([true, true, undefined]);
  });

  it('stays held when only the phone is back, or only the panel speaks', () => {
    const { job } = away();
    expect(orders(job.say('panel', 'go on'))).toEqual([]);
    expect(orders(job.say('panel', 'start'))).toEqual([]);
    const facts = back(job);
    expect(orders(facts)).toEqual([]);
    expect(ofType(facts, 'notice').map(({ code }) => code)).toEqual(['back']);
    expect(orders(job.say('panel', 'go on'))).toEqual([]);
    expect(orders(job.say('panel', '121'))).toEqual([]);
  });

  it.each(['ready', 'go on', "I'm back", 'yes', 'start'])(
    'is given when somebody there says "%s"',
    (words) => {
      const { job } = away();
      back(job);
      expect(orders(job.say('emitter', words))).toEqual(['turn']);
      expect(job.state.held).toBe(false);
    },
  );

  it('is given at once if it is for the panel, and one given before stays', () => {
    const job = turned();
    job.input({ kind: 'link', seat: 'emitter', online: false });
    job.wait(5_000);
    expect(job.action?.kind).toBe('read');
    const standing = atTurn();
    const { seq } = standing.turn;
    standing.input({ kind: 'link', seat: 'emitter', online: false });
    standing.input({ kind: 'tick' });
    expect([standing.turn.seq, standing.state.held]).toEqual([seq, false]);
  });

  it('is given after another phone took the seat, and somebody there says so', () => {
    const { job } = away();
    const facts = job.input({ kind: 'seated', seat: 'emitter', device: 'spare', takeover: true });
    expect([orders(facts), ofType(facts, 'notice').map(({ code }) => code)]).toEqual([[], ['back']]);
    expect(orders(job.say('emitter', 'ready'))).toEqual(['turn']);
  });
});
