import type { Alphabet } from './logits.ts';

/** What the sound says when any letter may follow any other. */
export interface FreeText {
  text: string;
  /** Log probability of the likeliest path of tokens: no sentence fits the sound much better. */
  score: number;
}

/** The likeliest token of each frame, repeats and blanks dropped. */
export function freeText(logProbs: Float64Array, tokens: number, alphabet: Alphabet): FreeText {
  const letterOf = new Map([...alphabet.letters].map(([letter, token]) => [token, letter]));
  letterOf.set(alphabet.space, ' ');
  let text = '';
  let score = 0;
  let last = alphabet.blank;
  for (let at = 0; at < logProbs.length; at += tokens) {
    let best = 0;
    for (let i = 1; i < tokens; i++) {
      if ((logProbs[at + i] as number) > (logProbs[at + best] as number)) best = i;
    }
    score += logProbs[at + best] as number;
    if (best !== last) text += letterOf.get(best) ?? '';
    last = best;
  }
  return { text: text.replace(/ +/g, ' ').trim(), score };
}
