import { describe, expect, it } from 'vitest';
import type { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import type { Action, Question } from '../../src/model/advice.ts';
import { type Answer, answersTo, answersToQuestion } from '../../src/phrases/answers.ts';
import { toldWords, WORDS } from '../../src/phrases/buttons.ts';
import { movedText } from '../../src/phrases/facts.ts';
import { questionText } from '../../src/phrases/instruct.ts';
import { SETUP } from './fixtures.ts';

const { meter } = SETUP;

const onlyIntent = (text: string): Intent | undefined => {
  const understood = parse(text, { meter });
  return understood.kind === 'understood' && understood.intents.length === 1
    ? understood.intents[0]
    : undefined;
};

const MEANING: Record<keyof typeof WORDS, Intent> = {
  done: { kind: 'done' },
  again: { kind: 'repeat' },
  wait: { kind: 'wait' },
  goOn: { kind: 'resume' },
  wrongWay: { kind: 'wrong-way' },
  cannot: { kind: 'cannot', why: 'unsaid' },
  stuck: { kind: 'cannot', why: 'stuck' },
  endOfTravel: { kind: 'cannot', why: 'end-of-travel' },
  outOfReach: { kind: 'cannot', why: 'out-of-reach' },
  yes: { kind: 'yes' },
  no: { kind: 'no' },
  unsure: { kind: 'unsure' },
  accept: { kind: 'accept' },
  stop: { kind: 'stop' },
  start: { kind: 'start' },
  noSignal: { kind: 'reading', reading: { kind: 'none' } },
  saturated: { kind: 'reading', reading: { kind: 'saturated' } },
  rising: { kind: 'trend', trend: 'rising' },
  falling: { kind: 'trend', trend: 'falling' },
  steady: { kind: 'trend', trend: 'steady' },
  wandering: { kind: 'trend', trend: 'wandering' },
  blocked: { kind: 'path', state: 'blocked' },
  clear: { kind: 'path', state: 'clear' },
  panelAlarm: { kind: 'panel', shows: 'alarm' },
  panelFault: { kind: 'panel', shows: 'fault' },
  panelNormal: { kind: 'panel', shows: 'normal' },
};

describe('the words of the buttons', () => {
  it.each(Object.entries(MEANING))('%s is understood as it is meant', (name, meaning) => {
    expect(onlyIntent(WORDS[name as keyof typeof WORDS])).toEqual(meaning);
  });
});

it('a name typed as the answer to "who was told?" is understood as who was told', () => {
  expect(onlyIntent(toldWords(' the control room '))).toEqual({ kind: 'told', who: 'the control room' });
});

describe('the answers offered under an instruction', () => {
  const words = (answers: Answer[]) => answers.map((a) => a.words);

  it('are each understood as exactly one thing', () => {
    const actions: Action[] = [
      { kind: 'turn', axis: 'vertical', eighths: 12, reversal: false },
      { kind: 'gain', change: 'lower', toward: 140 },
      { kind: 're-aim' },
      { kind: 'block' },
      { kind: 'unblock' },
      { kind: 'check', causes: ['loose mount'] },
      { kind: 'offer-accept' },
    ];
    for (const action of actions) {
      const answers = answersTo(action, meter);
      expect(answers.length).toBeGreaterThan(0);
      for (const text of words(answers)) expect(onlyIntent(text), text).toBeDefined();
    }
  });

  it('to "fifteen or fifty?" are each value, "no" for neither, and "not sure"', () => {
    const question: Question = { kind: 'which-value', about: 3, options: [15, 50] };
    const answers = answersToQuestion(question, meter);
    expect(words(answers)).toEqual(['15', '50', WORDS.no, WORDS.unsure]);
    expect(onlyIntent('15')).toEqual({ kind: 'reading', reading: { kind: 'value', value: 15 } });
  });

  it('to one doubtful move are yes, no and not sure', () => {
    const question: Question = { kind: 'which-move', about: 3, options: [{ axis: 'vertical', eighths: 2 }] };
    expect(answersToQuestion(question, meter)).toEqual([
      { label: `Yes, ${movedText('vertical', 2)}`, words: WORDS.yes, main: true },
      { label: 'No', words: WORDS.no },
      { label: 'Not sure', words: WORDS.unsure },
    ]);
  });

  it('to a turn of long ago are the same, and the question says which one', () => {
    const options = [{ axis: 'vertical' as const, eighths: 2 }];
    const question: Question = { kind: 'which-move', about: 3, options, ago: 3 };
    expect(questionText(question, meter).say).toBe(`3 turns ago, did you turn: ${movedText('vertical', 2)}?`);
    expect(answersToQuestion(question, meter)).toHaveLength(3);
  });

  it('to several possible moves are one for each, in words that are understood as that move', () => {
    for (let eighths = -12; eighths <= 12; eighths++) {
      if (eighths === 0) continue;
      const question: Question = {
        kind: 'which-move',
        about: 3,
        options: [
          { axis: 'vertical', eighths },
          { axis: 'horizontal', eighths },
        ],
      };
      const [first] = answersToQuestion(question, meter);
      expect(onlyIntent(first?.words ?? ''), first?.words).toEqual({
        kind: 'moved',
        axis: 'vertical',
        eighths: Math.abs(eighths),
        way: eighths > 0 ? 'clockwise' : 'anticlockwise',
      });
    }
  });
});
