import { describe, expect, it } from 'vitest';
import { decide } from '../../src/conversation/decide.ts';
import { wordGraph } from '../../src/grammar/graph.ts';
import { hearer } from '../../src/speech/hear.ts';
import type { Alphabet, Logits } from '../../src/speech/logits.ts';

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

const hear = hearer(wordGraph(), ALPHABET);

/** A second hearer to whom "go" is this many times as likely as "no". */
const goTimes = (times: number) => (text: string) =>
  text === 'no' ? 0 : text === 'go' ? Math.log(times) : Number.NEGATIVE_INFINITY;

describe('what a second hearer hears otherwise', () => {
  const decision = (opinion?: (text: string) => number) => {
    const { text, confidence, alternatives } = hear(clearly('no'), {}, opinion);
    return decide({ via: 'voice', text, confidence, alternatives });
  };

  it('is not asked where there is none', () => {
    expect(decision()).toMatchObject({ kind: 'taken', intents: [{ kind: 'no' }] });
  });

  it.each([
    ['hears the same', () => (text: string) => (text === 'no' ? 0 : -9), 'taken'],
    ['finds it as likely as all else together', () => goTimes(0.99), 'taken'],
    ['finds it a little less likely', () => goTimes(1.01), 'doubtful'],
    ['hears another word', () => goTimes(1000), 'doubtful'],
  ])('asks unless it %s', (_, opinion, kind) => {
    expect(decision(opinion()).kind).toBe(kind);
  });
});
