import { describe, expect, it } from 'vitest';
import type { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import type { Trend } from '../../src/model/reports.ts';
import { BYTE, intentsIn, value } from './read.ts';

const none: Intent = { kind: 'reading', reading: { kind: 'none' } };
const saturated: Intent = { kind: 'reading', reading: { kind: 'saturated' } };
const trend = (trend: Trend): Intent => ({ kind: 'trend', trend });
const moved = (
  eighths?: number,
  rest: Omit<Extract<Intent, { kind: 'moved' }>, 'kind' | 'eighths'> = {},
): Intent => ({
  kind: 'moved',
  ...(eighths === undefined ? {} : { eighths }),
  ...rest,
});
const gain = (change: 'lowered' | 'raised' | 'set' | 'full', to?: number): Intent => ({
  kind: 'gain',
  change,
  ...(to === undefined ? {} : { to }),
});
const path = (state: 'blocked' | 'partial' | 'clear', by?: 'half' | 'filter'): Intent => ({
  kind: 'path',
  state,
  ...(by && { by }),
});
const graded = (filter: number): Intent => ({ kind: 'path', state: 'partial', by: 'filter', filter });
const panel = (shows: 'alarm' | 'fault' | 'normal'): Intent => ({ kind: 'panel', shows });
const cannot = (why: 'stuck' | 'end-of-travel' | 'out-of-reach' | 'unsaid'): Intent => ({
  kind: 'cannot',
  why,
});
const correct = (right: number, not?: number): Intent => ({
  kind: 'correct',
  reading: { kind: 'value', value: right },
  ...(not === undefined ? {} : { not: { kind: 'value', value: not } }),
});
const plain = (
  kind:
    | 'done'
    | 'undo'
    | 'yes'
    | 'no'
    | 'repeat'
    | 'wait'
    | 'resume'
    | 'wrong-way'
    | 'swap'
    | 'ask-reading'
    | 'accept'
    | 'stop'
    | 'start',
): Intent => ({ kind });

/** Each meaning, and the ways a crew says it, separated by semicolons. */
const SAID: [Intent[], string][] = [
  [
    [none],
    "no signal; nothing; nothing at all; nothing yet; still nothing; I can see nothing; lost it; lost the signal; signal lost; it's gone; no light; no reading; we've lost it; no response; can't see anything; the signal is gone",
  ],
  [
    [saturated],
    "saturated; it's saturated; maxed out; pegged; over range; overrange; off the scale; full scale; overloaded; too strong; signal too high; it's pegged; still saturated",
  ],
  [
    [trend('rising')],
    "rising; it's rising; going up; climbing; getting stronger; coming up; it's going up; still rising; better; it went up; signal is rising",
  ],
  [
    [trend('falling')],
    "falling; dropping; it's dropping; going down; getting weaker; it dropped; worse; the reading is falling; it's gone down; gone down",
  ],
  [
    [trend('steady')],
    "steady; no change; not moving; it's steady; stable; the same; still the same; no difference; it's settled; hasn't moved; didn't change; holding steady; unchanged; the reading is steady",
  ],
  [
    [trend('wandering')],
    "wandering; it's wandering; jumping about; it keeps jumping around; still moving about; going up and down; the reading is all over the place; unsteady; it won't settle",
  ],
  [[value(142), trend('wandering')], 'one forty two and wandering; 142, jumping about'],
  [
    [trend('rising'), value(142)],
    "rising, one forty two; going up, 142; up to one forty two; it's going up one four two",
  ],
  [[value(142), trend('rising')], 'one forty two and rising; 142 rising; one four two, still rising'],
  [[trend('falling'), value(90)], 'dropping, ninety; down to ninety; dropped to ninety; fell to nine zero'],
  [[trend('steady'), value(140)], 'steady at one forty; no change, one forty; holding steady at 140'],

  [
    [plain('done')],
    "done; done it; that's done; all done; I'm done; I've done it; turned; turned it; moved it; I moved it; turn done; turn complete; it's done; done now; okay, done",
  ],
  [[plain('done'), value(142)], 'done, one forty two; done, reading one four two; done now 142'],
  [
    [moved(2)],
    'quarter turn; a quarter turn; quarter; done a quarter; done, quarter turn; moved it a quarter turn; quarter of a turn; 1/4; ¼ turn; 0.25 turns; one quarter',
  ],
  [[moved(1)], 'an eighth; eighth of a turn; eighth turn; one eighth; 1/8; ⅛'],
  [[moved(3)], 'three eighths; three eighths of a turn; 3/8 turn'],
  [[moved(4)], 'half a turn; half turn; a half turn; turned it half a turn; did a half; ½; 0.5 turn'],
  [[moved(6)], 'three quarters; three quarters of a turn; three quarter turn; ¾ turn'],
  [[moved(8)], 'one turn; a full turn; one full turn; a whole turn; full turn; 1 turn'],
  [[moved(10)], 'one and a quarter turns; a turn and a quarter; 1.25 turns; 1 1/4 turns; 1¼ turns'],
  [[moved(12)], 'one and a half turns; a turn and a half; 1.5 turns; 1½ turns'],
  [
    [moved(2, { way: 'back', axis: 'vertical' })],
    'quarter turn back on the vertical; a quarter back on vertical; back a quarter on the vertical; vertical a quarter back; vertical back a quarter; I turned the vertical a quarter back',
  ],
  [
    [moved(2, { way: 'back' })],
    'quarter back; back a quarter; quarter turn back; went back a quarter; backed off a quarter; a quarter turn the other way; quarter turn in reverse',
  ],
  [
    [moved(2, { way: 'on' })],
    'another quarter; a quarter more; a quarter on; a quarter turn further; on a quarter',
  ],
  [
    [moved(2, { way: 'clockwise' })],
    'quarter turn clockwise; a quarter clockwise; clockwise a quarter; quarter cw; done, quarter turn clockwise',
  ],
  [
    [moved(1, { way: 'anticlockwise' })],
    'an eighth anticlockwise; eighth anti-clockwise; an eighth counterclockwise; an eighth counter-clockwise; eighth ccw',
  ],
  [[moved(undefined, { way: 'clockwise' })], 'clockwise'],
  [[moved(undefined, { way: 'anticlockwise' })], 'anticlockwise; counterclockwise'],
  [[moved(2, { way: 'in' })], 'a quarter in; in a quarter; screwed it in a quarter'],
  [[moved(undefined, { way: 'out' })], 'turned it out; wound out; screwed it out'],
  [[moved(2, { way: 'left' })], 'quarter turn left; a quarter to the left; quarter left'],
  [
    [moved(2, { axis: 'horizontal' })],
    'quarter on the horizontal; horizontal a quarter; the horizontal adjuster a quarter turn',
  ],
  [
    [moved(4)],
    'half for quarter; half for a quarter; half instead of a quarter; did a half turn instead of a quarter',
  ],
  [[moved(undefined, { way: 'clockwise' })], 'turned it clockwise; went clockwise; moved clockwise'],
  [[moved(undefined, { axis: 'vertical' })], 'turned the vertical one; moved the vertical; turned vertical'],
  [[moved(undefined)], 'turned it a bit; a touch; moved it slightly'],
  [
    [moved(2), value(142)],
    'quarter turn, one forty two; quarter turn and now one forty two; a quarter turn, reading 142',
  ],

  [
    [gain('lowered')],
    'gain down; lowered the gain; turned the gain down; I turned down the gain; reduced gain; gain lowered; gain is down; gain is lower',
  ],
  [[gain('raised')], 'gain up; raised the gain; turned the gain up; gain is up; increased the gain'],
  [
    [gain('lowered', 40)],
    'gain down to forty; lowered the gain to forty; gain reduced to 40; gain lowered to four zero percent',
  ],
  [[gain('raised'), trend('rising')], 'turned the gain up, stronger; turned gain up and now stronger'],
  [[gain('raised', 60)], 'gain up to sixty; raised the gain to sixty'],
  [
    [gain('set', 40)],
    'gain is now forty; gain at forty; gain forty; gain set to forty; set the gain to forty; gain now 40',
  ],
  [[gain('set', 3)], 'gain step three; gain to step three; gain is on step three'],
  [
    [gain('full')],
    'full gain; gain full; gain at maximum; maximum gain; gain on full; max gain; gain all the way up',
  ],
  [
    [gain('lowered'), value(120)],
    "lowered the gain, now one twenty; gain down, now one twenty; gain down, it's one twenty; gain lowered and now 120",
  ],
  [
    [gain('lowered', 40), value(120)],
    'gain down to forty, now one twenty; lowered the gain to forty, reading one twenty',
  ],
  [[gain('set', 140)], 'gain is one forty; gain at one four zero'],
  [[plain('done'), gain('lowered')], 'done, gain down; done, lowered the gain'],
  [[saturated, gain('lowered'), value(120)], 'saturated, lowered the gain, now one twenty'],

  [
    [path('blocked')],
    'blocked; beam blocked; path is blocked; covered; fully covered; beam covered; covered it; covered the receiver; someone in the beam; something in the way',
  ],
  [[path('partial', 'half')], 'half covered; half blocked; beam half covered; half covered the receiver'],
  [[path('partial')], 'partly covered; partially blocked; partly covered the receiver'],
  [[path('partial', 'filter')], 'filter on; the test filter is in place; filter in'],
  [
    [graded(60)],
    'the 60 percent filter is on; sixty filter on; 60 filter on; 60% filter on; sixty percent test filter in place; six zero filter in; the filter of sixty percent is on; I put the sixty filter on',
  ],
  [[graded(35)], 'thirty five percent filter in; three five filter on; 35 filter is now in'],
  [[graded(12.5)], 'twelve point five percent filter on; the 12.5 percent filter is on'],
  [[graded(60), value(56)], 'sixty filter on, 56; 60 filter on now fifty six'],
  [[graded(60), panel('alarm')], 'sixty filter on and panel in alarm'],
  // No filter holds back all the light or more: the number is the reading before it.
  [[value(142), path('partial', 'filter')], 'one forty two, filter on; 142 filter on'],
  [[value(100), path('partial', 'filter')], 'a hundred, filter on; 100 filter on'],
  [
    [path('clear')],
    'clear; path clear; the path is clear; beam is clear; uncovered; cover off; all clear; not blocked; nothing in the way; it is clear',
  ],
  [
    [panel('alarm')],
    'alarm; fire alarm; panel in alarm; panel shows alarm; panel shows fire alarm; the panel is in alarm; we got an alarm',
  ],
  [[panel('fault')], 'fault; in fault; panel in fault; panel shows a fault; the panel says fault'],
  [
    [panel('normal')],
    'normal; panel normal; panel is normal; restored; back to normal; fault cleared; no fault; panel restored',
  ],
  [[path('blocked'), panel('fault')], 'covered, panel in fault; beam blocked and fault'],

  [
    [plain('swap')],
    'swap; swap over; swap adjuster; swap adjusters; change the adjuster; switch adjuster; the other adjuster; next adjuster; go to the other one',
  ],
  [
    [{ kind: 'swap', axis: 'vertical' }],
    'switch to vertical; switch to the vertical; go to the vertical; change to vertical; try the vertical; moved to the vertical',
  ],
  [
    [{ kind: 'swap', axis: 'horizontal' }],
    'swap to horizontal; do the horizontal; go over to the horizontal adjuster',
  ],

  [
    [correct(124)],
    'wrong, one two four; wrong, 124; no, one twenty four; no, 124; correction one two four; correction, one twenty four; I said one two four; make that 124; sorry, one twenty four; no, I said one twenty four; should be 124; I meant one twenty four; actually one twenty four; nope, 124; no, wrong, 124',
  ],
  [[correct(15)], 'I said one five; no, fifteen; wrong, fifteen'],
  [
    [correct(15, 50)],
    'not fifty, fifteen; not fifty but fifteen; fifteen not fifty; no, fifteen, not fifty; not 50 but 15',
  ],
  [[{ kind: 'correct', reading: { kind: 'none' } }], 'no, no signal; wrong, nothing; correction, no reading'],
  [[{ kind: 'correct', reading: { kind: 'saturated' } }], 'no, saturated; wrong, saturated'],
  [
    [plain('undo')],
    'scratch that; take that back; undo; undo that; forget that; disregard; disregard that; cancel that; delete that; strike that; ignore that',
  ],

  [
    [plain('yes')],
    "yes; yeah; yep; aye; affirmative; correct; that's correct; that's right; confirmed; okay; ok; roger; copy that; yes please",
  ],
  [[plain('no')], "no; nope; negative; wrong; that's wrong; incorrect; not right"],
  [[plain('yes'), value(15)], 'yes, fifteen; yes fifteen; yes, one five'],
  [[plain('yes'), plain('done')], 'yes, done'],
  [
    [plain('repeat')],
    "say again; say again please; repeat; repeat that; come again; pardon; what was that; I didn't catch that; once more; please repeat; say that again; say again, over",
  ],
  [
    [plain('wait')],
    "wait; wait one; hold on; stand by; standby; hang on; one moment; just a second; hold; give me a minute; not yet; not ready; not done yet; I'm not ready",
  ],
  [[plain('resume')], "go; go on; go ahead; resume; carry on; continue; ready; I'm ready; proceed; I'm back"],
  [
    [cannot('stuck')],
    "stuck; it's stuck; jammed; seized; it won't turn; wont turn; won't move; I can't turn it; I can't, it's stuck; can't, it's stuck",
  ],
  [
    [cannot('end-of-travel')],
    'end of travel; at the stop; at the end stop; at the end of the thread; run out of travel; no more travel; bottomed out; on the stop',
  ],
  [
    [cannot('out-of-reach')],
    "can't reach it; I can't reach it; out of reach; cannot reach it; can't reach; I can't get to the screw",
  ],
  [[cannot('unsaid')], "can't; I can't; cannot; can't do it; unable; no can do; I cannot do that; cant"],
  [
    [plain('wrong-way')],
    "wrong way; that's the wrong way; wrong direction; going the wrong way; I turned it the wrong way",
  ],
  [[plain('wrong-way'), trend('falling')], 'wrong way, falling; wrong direction, going down'],
  [
    [plain('ask-reading')],
    "what's the reading; what is the reading; what is it now; what have you got; what do you see; what are you getting; what does it say; what's it say; reading please; give me a reading; whats the reading",
  ],
  [[plain('done'), plain('ask-reading')], "done, what's the reading; done, what have you got"],
  [
    [plain('accept')],
    'accept; accept it; accept that; I accept; accept the alignment; accepted; sign it off',
  ],
  [[plain('stop')], 'stop; stop stop stop; stop now; abort; halt; stop it'],
  [[plain('stop'), value(140)], 'stop, one forty'],
  [[plain('start')], "start; begin; let's go; start again; restart"],
  [[plain('done'), plain('wait')], 'done, stand by; done, wait'],
];

/** "moved 2 back", "reading 142, trend rising". */
const inWords = (intents: Intent[]): string =>
  intents
    .map((intent) =>
      JSON.stringify(intent)
        .match(/(?<=:)[^{}[\],]+/g)
        ?.join(' '),
    )
    .join(', ')
    .replaceAll('"', '');

describe('the crew is understood', () => {
  for (const [intents, phrases] of SAID) {
    for (const phrase of phrases.split('; ')) {
      it(`"${phrase}" means ${inWords(intents)}`, () => {
        expect(intentsIn(phrase)).toEqual(intents);
      });
    }
  }
});

describe('a remark', () => {
  it.each([
    ['note, bracket is loose', 'bracket is loose'],
    ['Note: the bracket is LOOSE, 2nd bolt.', 'the bracket is LOOSE, 2nd bolt.'],
    ['note that somebody parked a forklift in the beam', 'somebody parked a forklift in the beam'],
    ['make a note that one forty two was at half gain', 'one forty two was at half gain'],
    ['for the record, no signal before lunch', 'no signal before lunch'],
  ])('"%s" is kept word for word', (text, kept) => {
    expect(intentsIn(text)).toEqual([{ kind: 'remark', text: kept }]);
  });

  it('"note" with nothing after it is unclear', () => {
    expect(parse('note').kind).toBe('unclear');
  });
});

describe('words that mean one thing at one seat and another at the other are asked about', () => {
  it.each<[string, Intent[][]]>([
    ['half', [[moved(4)], [path('partial', 'half')]]],
    ['one and a half', [[moved(12)], [value(1.5)]]],
    ['up', [[trend('rising')], [moved(undefined, { way: 'up' })]]],
    ['down', [[trend('falling')], [moved(undefined, { way: 'down' })]]],
    ['right', [[plain('yes')], [moved(undefined, { way: 'right' })]]],
    ['vertical', [[{ kind: 'swap', axis: 'vertical' }], [moved(undefined, { axis: 'vertical' })]]],
    ['cancel', [[plain('undo')], [plain('stop')]]],
    ['not clear', [[path('blocked')], [path('partial')]]],
    ['gain down forty', [[gain('lowered', 40)], [gain('lowered'), value(40)]]],
    ['correct, one twenty', [[plain('yes'), value(120)], [correct(120)]]],
    ['negative one twenty', [[value(-120)], [correct(120)]]],
    [
      'no beam covered',
      [
        [none, path('blocked')],
        [plain('no'), path('blocked')],
      ],
    ],
  ])('"%s"', (text, options) => {
    const heard = parse(text);
    expect(heard.kind).toBe('ambiguous');
    if (heard.kind === 'ambiguous') expect(heard.options).toEqual(expect.arrayContaining(options));
    if (heard.kind === 'ambiguous') expect(heard.options).toHaveLength(options.length);
  });

  it('"negative one twenty" on a meter without a minus is a correction', () => {
    expect(intentsIn('negative one twenty', BYTE)).toEqual([correct(120)]);
  });
});

describe('what is not a sentence of ours is unclear', () => {
  it.each<[string, string[]]>([
    ['', []],
    ['   ', []],
    ['...', []],
    ['um, er', []],
    ['over', []],
    ['banana', ['banana']],
    ['one forty banana', ['banana']],
    ['done my shopping', ['shopping']],
    ['pass me the spanner', ['spanner']],
    ['one hundred and', []],
    ["I don't accept", []],
    ['do not stop', []],
    ['never mind the alarm', ['mind']],
    ['less than fifty', ['less']],
    ['<50', ['<']],
    ['>50', ['>']],
    ['142+', ['+']],
    ['told him one forty', ['him']],
    ['up two', []],
    ['quarter turn one way or the other', []],
    ['five turns', []],
    ['eight turn', []],
    ['1/3 turn', []],
    ['0.3 turns', []],
    ['один сорок два', ['один', 'сорок', 'два']],
    ['$ 142', ['$']],
  ])('"%s"', (text, unknown) => {
    expect(parse(text)).toEqual({ kind: 'unclear', unknown });
  });
});

describe('units', () => {
  it('takes no reading in a unit that the meter does not have', () => {
    expect(parse('fifty volts', { meter: { min: 0, max: 100, unit: 'percent' } }).kind).toBe('unclear');
    expect(intentsIn('fifty percent', { meter: { min: 0, max: 100, unit: '%' } })).toEqual([value(50)]);
    expect(intentsIn('3.5 V', { meter: { min: 0, max: 5, unit: 'V' } })).toEqual([value(3.5)]);
    expect(intentsIn('gain at fifty percent', { meter: { min: 0, max: 5, unit: 'V' } })).toEqual([
      gain('set', 50),
    ]);
  });

  it.each(['V', 'a', '%', 'µA', 'c++', '(', 'on'])(
    'leaves other words alone where the unit is "%s"',
    (unit) => {
      const meter = { min: 0, max: 100, unit };
      expect(intentsIn('quarter turn on the vertical', { meter })).toEqual([moved(2, { axis: 'vertical' })]);
      expect(intentsIn('a hundred', { meter })).toEqual([value(100)]);
      expect(intentsIn(`42 ${unit}`, { meter })).toEqual([value(42)]);
    },
  );

  it('knows the unit of the job’s own meter', () => {
    expect(intentsIn('forty two millivolts', { meter: { min: 0, max: 100, unit: 'millivolts' } })).toEqual([
      value(42),
    ]);
    expect(parse('forty two millivolts').kind).toBe('unclear');
  });
});
