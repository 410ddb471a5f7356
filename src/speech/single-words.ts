import { soundsLike } from '../grammar/homophones.ts';
import { type Logits, logSoftmax } from './logits.ts';
import { type Arc, cuttings } from './pieces.ts';
import { remembered } from './remembered.ts';
import { wordWindow } from './window.ts';

/**
 * A hearer of single words, the third beside letters and the second hearer: a network that is given one word at a time,
 * cut out of the sound, and names it. It knows nothing of sentences, and so it cannot talk itself into one.
 */
export interface SingleWordModel {
  /** In the order of their tokens, which begin with 1. Token 0 is "not one whole word of these". */
  readonly words: readonly string[];
  /** One row for each window of `WINDOW` samples. */
  logits(windows: readonly Float32Array[]): Promise<Logits>;
}

/** What single words say of an utterance. */
export interface Spotted {
  /** Log of how well these words explain the sound. Undefined where it does not know one of them. */
  score(text: string): number | undefined;
  /** How much speech the best way through these words leaves out, in 10 ms. Undefined where it does not know one, or finds no way. */
  leftOut(text: string): number | undefined;
  /** What explains it best, likeliest first: numbers, digit by digit, and words alone. */
  readonly rivals: readonly { text: string; score: number }[];
}

/** What speech costs that no word explains, natural log for each 10 ms. */
const UNEXPLAINED = 0.4;
/** No word is less likely than this, natural log. */
const FLOOR = Math.log(1e-6);
/** Only words that are likelier than this begin another number. */
const WORTH_TRYING = -6;
const KEPT = 30;
const MOST_WORDS = 8;

/** The numbers it looks for are written with these. */
const DIGITS: ReadonlySet<string> = new Set([
  'zero',
  'oh',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
]);
/** Two digits or more, one by one. */
export const isStringOfDigits = (text: string): boolean => {
  const words = text.split(' ');
  return words.length >= 2 && words.every((word) => DIGITS.has(word));
};

/** `paid`: for what is left out; a part of the score, with its sign turned. */
interface Way {
  readonly score: number;
  readonly paid: number;
}
const NO_WAY: Way = { score: Number.NEGATIVE_INFINITY, paid: 0 };
const better = (one: Way, other: Way): Way => (other.score > one.score ? other : one);

/** Wordings that stand for a word it knows. */
const SAME: Readonly<Record<string, string>> = {
  fife: 'five',
  tree: 'three',
  fower: 'four',
  niner: 'nine',
};

/** The word that sounds as this one does. */
export const spokenAs = (word: string): string => SAME[word] ?? soundsLike(word);

/** Whether it knows every word of a text: where it does not, it could say nothing. */
export const knownTo = ({ words }: SingleWordModel, text: string): boolean =>
  text.split(' ').every((word) => words.includes(spokenAs(word)));

/** Listens for single words in a sound between all places where one may begin and end. */
export async function spot(model: SingleWordModel, sound: Float32Array): Promise<Spotted | undefined> {
  const { places, arcs, speech } = cuttings(sound);
  if (arcs.length === 0) return undefined;
  const windows = arcs.map(({ from, to }) => wordWindow(sound, places[from] as number, places[to] as number));
  const logits = await model.logits(windows);
  const gaps = speech.map((row) => row.map((frames) => -UNEXPLAINED * frames));
  return spotted(model.words, arcs, logSoftmax(logits), gaps);
}

/**
 * `logProbs`: arcs × (words + 1), row by row; an arc is a pair of places, by number. `gaps`: what it costs to leave out
 * the sound between two places.
 */
export function spotted(
  words: readonly string[],
  arcs: readonly Arc[],
  logProbs: Float64Array,
  gaps: readonly (readonly number[])[],
): Spotted {
  const tokens = words.length + 1;
  const tokenOf = new Map(words.map((word, i) => [word, i + 1]));
  const worth = (arc: number, token: number): number =>
    Math.max(FLOOR, logProbs[arc * tokens + token] as number);
  const last = gaps.length - 1;

  /** The best way through these words, from the first place to the last. */
  const way = remembered((text: string): Way | undefined => {
    const skip = ({ score, paid }: Way, from: number, to: number): Way => {
      const gap = gaps[from]?.[to] as number;
      return { score: score + gap, paid: paid - gap };
    };
    let before = gaps.map((_, to) => skip({ score: 0, paid: 0 }, 0, to));
    for (const word of text.split(' ')) {
      const token = tokenOf.get(spokenAs(word));
      if (token === undefined) return undefined;
      const after = gaps.map(() => NO_WAY);
      for (const [i, { from, to }] of arcs.entries()) {
        const { score, paid } = before[from] as Way;
        after[to] = better(after[to] as Way, { score: score + worth(i, token), paid });
      }
      before = after.map((best, to) =>
        after.slice(0, to).reduce((most, one, from) => better(most, skip(one, from, to)), best),
      );
    }
    return before[last];
  });

  return {
    score: (text) => way(text)?.score,
    leftOut(text) {
      const found = way(text);
      return found && Number.isFinite(found.score) ? found.paid / UNEXPLAINED : undefined;
    },
    rivals: rivals(),
  };

  function rivals(): { text: string; score: number }[] {
    const all = [...tokenOf].map(([word, token]) => ({ word, token }));
    const digits = all.filter(({ word }) => DIGITS.has(word));
    const beginnings: Map<string, number>[] = [];
    for (let to = 0; to <= last; to++) {
      const here = new Map<string, number>([['', gaps[0]?.[to] as number]]);
      const offer = (text: string, value: number): void => {
        if (value > (here.get(text) ?? Number.NEGATIVE_INFINITY)) here.set(text, value);
      };
      for (const [from, before] of beginnings.entries()) {
        for (const [text, value] of before) offer(text, value + (gaps[from]?.[to] as number));
      }
      for (const [i, arc] of arcs.entries()) {
        if (arc.to !== to) continue;
        for (const [text, value] of beginnings[arc.from] ?? []) {
          const said = text.split(' ');
          if (said.length >= MOST_WORDS) continue;
          for (const { word, token } of text === '' ? all : DIGITS.has(said[0] as string) ? digits : []) {
            if (worth(i, token) > WORTH_TRYING)
              offer(text === '' ? word : `${text} ${word}`, value + worth(i, token));
          }
        }
      }
      beginnings.push(new Map([...here].sort((a, b) => b[1] - a[1]).slice(0, KEPT)));
    }
    return [...(beginnings[last] ?? [])].flatMap(([text, value]) =>
      text === '' ? [] : [{ text, score: value }],
    );
  }
}
