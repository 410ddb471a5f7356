import { describe, expect, it } from 'vitest';
import { decide } from '../../src/conversation/decide.ts';
import { wordGraph } from '../../src/grammar/graph.ts';
import { heardOf, weigher } from '../../src/speech/hear.ts';
import type { Alphabet, Logits } from '../../src/speech/logits.ts';
import { recogniser } from '../../src/speech/recogniser.ts';

const LETTERS = [..."abcdefghijklmnopqrstuvwxyz'"];
const ALPHABET: Alphabet = {
  blank: 0,
  space: 1,
  letters: new Map(LETTERS.map((letter, i) => [letter, i + 2])),
};

/** Letters said clearly, one after the other, with a blank between them; a little "g" is in the sound, too. */
function clearly(text: string): Logits {
  const said = [...text].flatMap((letter) => [
    ALPHABET.letters.get(letter) ?? ALPHABET.space,
    ALPHABET.blank,
  ]);
  const tokens = LETTERS.length + 2;
  const data = Float32Array.from(
    said.flatMap((token) =>
      Array.from({ length: tokens }, (_, t) => (t === token ? 9 : t === ALPHABET.letters.get('g') ? 4 : 0)),
    ),
  );
  return { data, frames: said.length, tokens };
}

const weigh = weigher(wordGraph(), ALPHABET);

/** A second hearer to whom "go" is this many times as likely as "no". */
const goTimes = (times: number) => (text: string) =>
  text === 'no' ? 0 : text === 'go' ? Math.log(times) : Number.NEGATIVE_INFINITY;

describe('what only single words found, and the second hearer finds likely', () => {
  /** The letters are sure of "eight", and single words like it better; "six" is this many times as likely to the second hearer. */
  const decision = (times: number, rivals: readonly string[] = ['eight', 'six']) => {
    const opinion = (text: string): number =>
      text === 'eight' ? 0 : text === 'six' ? Math.log(times) : Number.NEGATIVE_INFINITY;
    const spotted = {
      score: (text: string) => (text === 'eight' ? -0.5 : text === 'six' ? -2.5 : undefined),
      leftOut: () => 0,
      rivals: rivals.map((text) => ({ text, score: text === 'eight' ? -0.5 : -2.5 })),
    };
    return decide({ via: 'voice', ...heardOf(weigh(clearly('eight'), {}, opinion), spotted, () => 0.99) });
  };

  it.each([
    [0.249, 'taken'],
    [0.251, 'doubtful'],
    [1000, 'doubtful'],
  ])('%f times as likely is %s', (times, kind) => {
    expect(decision(times).kind).toBe(kind);
  });

  it('is named in the question', () => {
    expect(decision(0.251)).toMatchObject({
      kind: 'doubtful',
      options: [[{ reading: { value: 8 } }], [{ reading: { value: 6 } }]],
    });
  });

  it('is not looked for where nobody found it', () => {
    expect(decision(1000, ['eight']).kind).toBe('taken');
  });
});

describe('what a second hearer hears otherwise', () => {
  const decision = (opinion?: (text: string) => number) => {
    const { text, confidence, alternatives } = heardOf(weigh(clearly('no'), {}, opinion));
    return decide({ via: 'voice', text, confidence, alternatives });
  };

  it('is not asked where there is none', () => {
    expect(decision()).toMatchObject({ kind: 'taken', intents: [{ kind: 'no' }] });
  });

  it.each([
    ['hears the same', () => (text: string) => (text === 'no' ? 0 : -9), 'taken'],
    ['finds all else together a quarter as likely', () => goTimes(0.249), 'taken'],
    ['finds all else together a little likelier than that', () => goTimes(0.251), 'doubtful'],
    ['hears another word', () => goTimes(1000), 'doubtful'],
  ])('asks unless it %s', (_, opinion, kind) => {
    expect(decision(opinion()).kind).toBe(kind);
  });
});

describe('what single words say otherwise', () => {
  /** `said` explains the sound with this, `rival` with that; other words are not known. */
  const spotted = (said: Record<string, number>, rivals: Record<string, number>, left?: number) => ({
    score: (text: string) => said[text],
    leftOut: (_text: string) => left,
    rivals: Object.entries(rivals)
      .map(([text, score]) => ({ text, score }))
      .sort((a, b) => b.score - a.score),
  });
  const decision = (text: string, single: ReturnType<typeof spotted>) =>
    decide({ via: 'voice', ...heardOf(weigh(clearly(text)), single) });

  it.each([
    ['the same explains it best', { 'five eight': -1 }, { 'five eight': -1, nine: -6 }, 'taken'],
    ['another number explains it a little better', { 'five eight': -3 }, { 'nine eight': -2.01 }, 'taken'],
    ['another number explains it clearly better', { 'five eight': -3 }, { 'nine eight': -1.99 }, 'doubtful'],
    ['it does not know the words', {}, { 'nine eight': -0.1 }, 'taken'],
    ['the better explanation means the same', { 'five eight': -9 }, { 'fife ate': -1 }, 'taken'],
    ['words of the same meaning explain it', { 'fifty eight': -1 }, { 'nine eight': -1.5 }, 'taken'],
    ['it finds no room for the words', { 'five eight': Number.NEGATIVE_INFINITY }, { nine: -20 }, 'doubtful'],
  ])('where %s', (_, said, rivals, kind) => {
    expect(
      decision('five eight', spotted(said as Record<string, number>, rivals as Record<string, number>)).kind,
    ).toBe(kind);
  });

  it('names both in the question', () => {
    const asked = decision('eight', spotted({ eight: -8 }, { 'five eight': -0.2 }));
    expect(asked).toMatchObject({
      kind: 'doubtful',
      options: [[{ reading: { value: 8 } }], [{ reading: { value: 58 } }]],
    });
  });

  // What is left of a word that was cut is no word itself, so that no other number explains it. Ours, no source: 0.4 s.
  it.each([
    ['nothing', 0, 'taken'],
    ['0.39 s', 39, 'taken'],
    ['0.4 s', 40, 'doubtful'],
    ['it does not know how much', undefined, 'taken'],
  ])('asks where the words leave out speech: %s', (_, left, kind) => {
    expect(decision('five eight', spotted({ 'five eight': -1 }, { 'five eight': -1 }, left)).kind).toBe(kind);
  });

  it('asks only where every wording of the meaning leaves out that much', () => {
    const leftOut = (text: string): number => (text === 'five eight' ? 60 : 2);
    const single = { ...spotted({ 'five eight': -1 }, { 'five eight': -1 }), leftOut };
    expect(decision('five eight', single).kind).toBe('taken');
  });

  it('believes no more than everything together', () => {
    const { alternatives } = heardOf(weigh(clearly('eight')), spotted({ eight: -8 }, { 'five eight': -0.2 }));
    expect(alternatives.reduce((sum, { confidence }) => sum + confidence, 0)).toBeLessThanOrEqual(1 + 1e-9);
  });

  it.each([
    ['no', 1],
    ['go on', 0],
  ])('is asked only where it knows the words: "%s"', async (text, times) => {
    let asked = 0;
    const letters = { alphabet: ALPHABET, logits: async () => clearly(text) };
    const single = {
      words: ['no', 'yes'],
      logits: async (windows: readonly Float32Array[]) => {
        asked++;
        return { data: new Float32Array(3 * windows.length), frames: windows.length, tokens: 3 };
      },
    };
    const sound = Float32Array.from({ length: 16_000 }, (_, i) =>
      i > 4000 && i < 9000 ? Math.sin(i / 10) : 0,
    );
    await recogniser(letters, wordGraph(), { single }).hear(sound);
    expect(asked).toBe(times);
  });
});

describe('second hearer and single words together outvote the letters', () => {
  const outcome = (
    rival: string,
    { leads, believed = 0.97 }: { leads: number; believed?: number },
    single = -0.1,
  ) => {
    const opinion = (text: string): number => (text === rival ? leads : text === 'five' ? 0 : -50);
    const spotted = {
      score: (text: string) => (text === 'five' ? -2 : undefined),
      leftOut: () => 0,
      rivals: [{ text: rival, score: single }],
    };
    return decide({
      via: 'voice',
      ...heardOf(weigh(clearly('five'), {}, opinion), spotted, () => believed),
    });
  };

  it.each<[string, string, Parameters<typeof outcome>[1], number, string, number[]]>([
    ['taken where both are clear', 'nine five', { leads: 1.01 }, -0.1, 'taken', [95]],
    ['asked where the second hearer is not', 'nine five', { leads: 0.99 }, -0.1, 'doubtful', [5, 95]],
    [
      'asked where the letters are not sure that it is ours',
      'nine five',
      { leads: 9, believed: 0.9 },
      -0.1,
      'doubtful',
      [95, 5],
    ],
    ['asked where it is one digit', 'nine', { leads: 9 }, -0.1, 'doubtful', [5, 9]],
    ['asked where it is no digits', 'fifty one', { leads: 9 }, -0.1, 'doubtful', [5, 51]],
    ['asked where single words are not clear', 'nine five', { leads: 9 }, -1.01, 'doubtful', [5, 95]],
    ['left to the letters where neither is', 'nine five', { leads: -1.39 }, -1.01, 'taken', [5]],
  ])('%s', (_, rival, how, single, kind, values) => {
    const hearing = outcome(rival, how, single);
    expect(hearing.kind).toBe(kind);
    const meant =
      hearing.kind === 'taken' ? [hearing.intents] : hearing.kind === 'doubtful' ? hearing.options : [];
    expect(meant.flat()).toMatchObject(values.map((value) => ({ reading: { value } })));
  });
});
