import { describe, expect, it } from 'vitest';
import { type Decision, decide, type Words } from '../../src/conversation/decide.ts';

type Believed = readonly [text: string, confidence: number];

/** Words that the speech model heard, the likeliest first. */
const heard = (...believed: Believed[]): Words => {
  const [[text, confidence]] = believed as [Believed];
  return {
    via: 'voice',
    text,
    confidence,
    alternatives: believed.map(([text, confidence]) => ({ text, confidence })),
  };
};

/** "taken: 13", "ask: 13 or 30", "say it again": what comes of it, meanings in the order they are asked. */
const outcome = (hearing: Decision): string => {
  if (hearing.kind === 'unclear') return 'say it again';
  const meanings = hearing.kind === 'taken' ? [hearing.intents] : hearing.options;
  const said = meanings.map((intents) =>
    intents
      .map((intent) =>
        'reading' in intent && intent.reading.kind === 'value'
          ? intent.reading.value
          : intent.kind === 'path' && intent.filter !== undefined
            ? `filter ${intent.filter}`
            : intent.kind,
      )
      .join(' '),
  );
  return `${{ taken: 'taken', doubtful: 'ask' }[hearing.kind]}: ${said.join(' or ')}`;
};

describe('words heard', () => {
  it.each<[string, Believed[], string]>([
    ['sure to 0.91 are taken', [['one forty two', 0.91]], 'taken: 142'],
    ['sure to a hair less are asked', [['one forty two', 0.9099]], 'ask: 142'],
    ['sure to 0.4 are asked', [['one forty two', 0.4]], 'ask: 142'],
    ['sure to a hair less must be said again', [['one forty two', 0.3999]], 'say it again'],
    ['that are no sentence of ours must be said again, however sure', [['zork', 1]], 'say it again'],
  ])('%s', (_, believed, result) => {
    expect(outcome(decide(heard(...believed)))).toBe(result);
  });
});

describe('the belief in one meaning', () => {
  it.each<[string, Believed[], string]>([
    [
      'is summed over its wordings: 0.91 is taken',
      [
        ['one forty two', 0.45],
        ['one four two', 0.46],
      ],
      'taken: 142',
    ],
    [
      'is summed over its wordings: a hair less is asked',
      [
        ['one forty two', 0.45],
        ['one four two', 0.4599],
      ],
      'ask: 142',
    ],
    [
      'is summed over its wordings: 0.4 is asked',
      [
        ['one forty two', 0.2],
        ['one four two', 0.2],
      ],
      'ask: 142',
    ],
    [
      'is summed over its wordings: a hair less is no more',
      [
        ['one forty two', 0.2],
        ['one four two', 0.1999],
      ],
      'say it again',
    ],
    [
      'counts and not the likeliest wording alone: the meaning believed most comes first',
      [
        ['fifty', 0.4],
        ['one forty two', 0.3],
        ['one four two', 0.29],
      ],
      'ask: 142 or 50',
    ],
    [
      'takes in no wording that means something else',
      [
        ['one forty two', 0.5],
        ['one forty', 0.45],
      ],
      'ask: 142 or 140',
    ],
    [
      'takes in no wording that is no sentence of ours',
      [
        ['one forty two', 0.5],
        ['zork', 0.45],
      ],
      'ask: 142',
    ],
  ])('%s', (_, believed, result) => {
    expect(outcome(decide(heard(...believed)))).toBe(result);
  });

  it('takes in the text itself where it is not among the alternatives, and once where it is', () => {
    const alternatives = [{ text: 'one four two', confidence: 0.46 }];
    const words: Words = { via: 'voice', text: 'one forty two', confidence: 0.45, alternatives };
    expect(outcome(decide(words))).toBe('taken: 142');
    const once = [...alternatives, { text: 'one forty two', confidence: 0.4499 }];
    expect(outcome(decide({ ...words, alternatives: once }))).toBe('ask: 142');
  });

  it('is the confidence of the text where there are no alternatives, and nothing where there is none', () => {
    expect(outcome(decide({ via: 'voice', text: 'one forty two', confidence: 0.91 }))).toBe('taken: 142');
    expect(outcome(decide({ via: 'voice', text: 'one forty two' }))).toBe('say it again');
    expect(decide({ via: 'voice', text: 'one forty two' })).toEqual({ kind: 'unclear', unknown: [] });
  });
});

describe('what sounds like the other, thirteen and thirty,', () => {
  it.each<[string, Believed[], string]>([
    [
      'is asked about from a two-hundredth on',
      [
        ['thirteen', 0.99],
        ['thirty', 0.005],
      ],
      'ask: 13 or 30',
    ],
    [
      'is not below',
      [
        ['thirteen', 0.99],
        ['thirty', 0.0049],
      ],
      'taken: 13',
    ],
    [
      'is asked about the other way round',
      [
        ['ninety', 0.99],
        ['nineteen', 0.005],
      ],
      'ask: 90 or 19',
    ],
    [
      'is asked about behind a hundred',
      [
        ['one fifteen', 0.99],
        ['one fifty', 0.005],
      ],
      'ask: 115 or 150',
    ],
    [
      'is asked about in a report of two things',
      [
        ['done thirteen', 0.99],
        ['done thirty', 0.005],
      ],
      'ask: done 13 or done 30',
    ],
    [
      'is asked about in the grade of a filter',
      [
        ['fifteen filter on', 0.99],
        ['fifty filter on', 0.005],
      ],
      'ask: filter 15 or filter 50',
    ],
    [
      'is not in a grade that has no such other',
      [
        ['twenty five filter on', 0.99],
        ['thirty five filter on', 0.005],
      ],
      'taken: filter 25',
    ],
    [
      'is not where the rest is not the same',
      [
        ['done thirteen', 0.99],
        ['thirty', 0.005],
      ],
      'taken: done 13',
    ],
    [
      'is not another number',
      [
        ['thirteen', 0.99],
        ['forty', 0.005],
      ],
      'taken: 13',
    ],
    [
      'is not a number that has no such other',
      [
        ['one forty two', 0.99],
        ['one forty one', 0.005],
      ],
      'taken: 142',
    ],
    [
      'is not a correction of it',
      [
        ['thirteen', 0.99],
        ['wrong thirty', 0.005],
      ],
      'taken: 13',
    ],
    [
      'is asked about in a correction',
      [
        ['wrong thirteen', 0.99],
        ['wrong thirty', 0.005],
      ],
      'ask: 13 or 30',
    ],
    [
      'is not where no number was heard',
      [
        ['no signal', 0.99],
        ['thirty', 0.005],
      ],
      'taken: reading',
    ],
    [
      'is asked about behind what is likelier than it',
      [
        ['thirteen', 0.95],
        ['forty', 0.03],
        ['thirty', 0.006],
      ],
      'ask: 13 or 30',
    ],
  ])('%s', (_, believed, result) => {
    expect(outcome(decide(heard(...believed)))).toBe(result);
  });
});

describe('what is asked', () => {
  it.each<[string, Believed[], string]>([
    [
      'holds what is believed a tenth of the likeliest',
      [
        ['fifty', 0.5],
        ['forty', 0.05],
      ],
      'ask: 50 or 40',
    ],
    [
      'and nothing below',
      [
        ['fifty', 0.5],
        ['forty', 0.0499],
      ],
      'ask: 50',
    ],
    [
      'holds three at the most',
      [
        ['fifty', 0.4],
        ['forty', 0.2],
        ['sixty', 0.15],
        ['seventy', 0.1],
      ],
      'ask: 50 or 40 or 60',
    ],
    [
      'has the likeliest first',
      [
        ['forty', 0.2],
        ['fifty', 0.5],
        ['sixty', 0.3],
      ],
      'ask: 50 or 60 or 40',
    ],
    [
      'are all the meanings of words that have several, however sure the words',
      [['nineteen forty two', 1]],
      'ask: 1942 or 19 or 42',
    ],
    [
      'is asked though a wording with one meaning is among them',
      [
        ['nineteen forty two', 0.6],
        ['nineteen', 0.4],
      ],
      'ask: 19 or 1942 or 42',
    ],
  ])('%s', (_, believed, result) => {
    expect(outcome(decide(heard(...believed)))).toBe(result);
  });
});

describe('words that only make things safer or slower', () => {
  it.each<[string, Believed[], string]>([
    ['"stop" is taken where other words would be asked', [['stop', 0.4]], 'taken: stop'],
    ['"stand by" is', [['stand by', 0.4]], 'taken: wait'],
    ['"say again" is', [['say again', 0.4]], 'taken: repeat'],
    ['"undo" is', [['undo', 0.4]], 'taken: undo'],
    ['"stop" is not below that', [['stop', 0.3999]], 'say it again'],
    ['"yes" is asked', [['yes', 0.9]], 'ask: yes'],
    ['"go on" is asked', [['go on', 0.9]], 'ask: resume'],
    ['"done, stand by" is asked, for it reports a turn', [['done wait', 0.9]], 'ask: done wait'],
  ])('%s', (_, believed, result) => {
    expect(outcome(decide(heard(...believed)))).toBe(result);
  });
});

describe('words that end something', () => {
  const ends = { ends: () => true };
  const small = { ends: () => false };

  it.each<[string, Believed[], typeof ends, string]>([
    ['"accept" is taken from 0.97 on', [['accept', 0.97]], ends, 'taken: accept'],
    ['"accept" is asked a hair below', [['accept', 0.9699]], ends, 'ask: accept'],
    ['"yes" that ends something is taken from 0.97 on', [['yes', 0.97]], ends, 'taken: yes'],
    ['"yes" that ends something is asked a hair below', [['yes', 0.9699]], ends, 'ask: yes'],
    ['"no" that ends something is asked a hair below', [['no', 0.9699]], ends, 'ask: no'],
    ['"yes" to a small question is taken from 0.91 on', [['yes', 0.91]], small, 'taken: yes'],
    ['"yes" to a small question is asked a hair below', [['yes', 0.9099]], small, 'ask: yes'],
    ['"stop" needs no more than ever: it must work at once', [['stop', 0.4]], ends, 'taken: stop'],
  ])('%s', (_, believed, situation, result) => {
    expect(outcome(decide(heard(...believed), situation))).toBe(result);
  });

  it.each<[string, number, boolean, string]>([
    ['an ordinary word said again is taken from 0.4 on', 0.4, false, 'taken: done'],
    ['an ordinary word said again is not taken below', 0.3999, false, 'say it again'],
    ['one that ends something is taken from 0.91 on', 0.91, true, 'taken: done'],
    ['one that ends something is asked again a hair below', 0.9099, true, 'ask: done'],
  ])('after the question about it %s', (_, belief, isEnd, result) => {
    const situation = { ends: () => isEnd, isAsked: () => true };
    expect(outcome(decide(heard(['done', belief]), situation))).toBe(result);
  });

  it('what may be one of two is not settled by saying it again', () => {
    const words = heard(['fifty', 0.6], ['forty', 0.3]);
    expect(outcome(decide(words, { isAsked: () => true }))).toBe('ask: 50 or 40');
  });
});

describe('typed words and buttons', () => {
  it.each<[string, Words['via'], string, string]>([
    ['are taken as they stand', 'typed', 'thirteen', 'taken: 13'],
    ['are taken as they stand, by a button', 'button', 'done', 'taken: done'],
    [
      'are asked about where they have several meanings',
      'typed',
      'nineteen forty two',
      'ask: 1942 or 19 or 42',
    ],
    ['must be put again where they are no sentence of ours', 'typed', 'zork', 'say it again'],
  ])('%s', (_, via, text, result) => {
    expect(outcome(decide({ via, text }))).toBe(result);
  });

  it('that are not understood are named, and alternatives do not count', () => {
    expect(decide({ via: 'typed', text: 'zork' })).toEqual({ kind: 'unclear', unknown: ['zork'] });
    const alternatives = [{ text: 'fifty', confidence: 1 }];
    expect(decide({ via: 'typed', text: 'zork', confidence: 1, alternatives })).toEqual({
      kind: 'unclear',
      unknown: ['zork'],
    });
  });
});
