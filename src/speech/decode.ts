import { type Alphabet, logAdd } from './logits.ts';
import type { Spelling, Stem } from './spelling.ts';

/** A whole sentence of the graph, and how well it fits the sound. */
export interface Candidate {
  text: string;
  /** Log probability of the sound being this text, over all its paths. */
  score: number;
  /** What its words cost, see `BeamOptions.cost`. */
  cost: number;
}

export interface BeamOptions {
  /** Beginnings that are searched at the same time. */
  width?: number;
  /** Beginnings less likely than the best by more than this (natural log) are dropped. */
  margin?: number;
  /** Subtracted from a sentence's log probability for each word. */
  cost?: (word: string) => number;
}

/** Letters below this log probability are not tried in a frame. */
const FLOOR = -12;

/**
 * A beginning of a sentence. `ending`, `underWay`: log probability of its paths that end in a blank, and of
 * the others.
 */
interface Beginning {
  readonly stem: Stem;
  readonly token: number;
  readonly text: string;
  readonly cost: number;
  readonly children: Map<number, Beginning>;
  ending: number;
  underWay: number;
  nextEnding: number;
  nextUnderWay: number;
  touched: boolean;
}

const NEVER = Number.NEGATIVE_INFINITY;

/**
 * Prefix beam search (Graves; Hannun et al. 2014, "First-Pass Large Vocabulary Continuous Speech Recognition using
 * Bi-Directional Recurrent DNNs", from memory) over the sentences of a graph. Returns whole sentences only,
 * best first; none when no sentence fits at all.
 */
export function search(
  logProbs: Float64Array,
  tokens: number,
  alphabet: Alphabet,
  spelling: Spelling,
  { width = 48, margin = 22, cost = () => 0 }: BeamOptions = {},
): Candidate[] {
  const { blank, space } = alphabet;
  const letterOf = new Map([...alphabet.letters].map(([letter, token]) => [token, letter]));
  const begin = (stem: Stem, token: number, text: string, charged: number): Beginning => ({
    stem,
    token,
    text,
    cost: charged,
    children: new Map(),
    ending: NEVER,
    underWay: NEVER,
    nextEnding: NEVER,
    nextUnderWay: NEVER,
    touched: false,
  });
  const root = begin(spelling.start, blank, '', 0);
  root.ending = 0;
  let beam = [root];

  for (let at = 0; at < logProbs.length; at += tokens) {
    const touched: Beginning[] = [];
    const touch = (one: Beginning): Beginning => {
      if (!one.touched) touched.push(one);
      one.touched = true;
      return one;
    };
    const extend = (from: Beginning, token: number, to: () => Beginning, total: number) => {
      const fit = logProbs[at + token] as number;
      if (fit < FLOOR) return;
      const mass = token === from.token ? from.ending : total;
      if (mass === NEVER) return;
      let child = from.children.get(token);
      if (!child) {
        child = to();
        from.children.set(token, child);
      }
      touch(child).nextUnderWay = logAdd(child.nextUnderWay, mass + fit);
    };
    for (const one of beam) {
      const total = logAdd(one.ending, one.underWay);
      touch(one).nextEnding = logAdd(one.nextEnding, total + (logProbs[at + blank] as number));
      if (one !== root) {
        one.nextUnderWay = logAdd(one.nextUnderWay, one.underWay + (logProbs[at + one.token] as number));
      }
      for (const [token, stem] of one.stem.next) {
        extend(one, token, () => begin(stem, token, one.text + letterOf.get(token), one.cost), total);
      }
      const { word } = one.stem;
      if (word) {
        extend(
          one,
          space,
          () => begin(spelling.at(word.after), space, `${one.text} `, one.cost + cost(word.text)),
          total,
        );
      }
    }
    let best = NEVER;
    for (const one of touched) {
      one.ending = one.nextEnding;
      one.underWay = one.nextUnderWay;
      one.nextEnding = NEVER;
      one.nextUnderWay = NEVER;
      one.touched = false;
      best = Math.max(best, merit(one));
    }
    beam = touched.filter((one) => merit(one) >= best - margin);
    if (beam.length > width) beam = beam.sort((a, b) => merit(b) - merit(a)).slice(0, width);
  }

  return beam
    .flatMap((one): Candidate[] => {
      const { word } = one.stem;
      const whole = word !== undefined && spelling.ends(word.after);
      return whole
        ? [{ text: one.text, score: logAdd(one.ending, one.underWay), cost: one.cost + cost(word.text) }]
        : [];
    })
    .sort((a, b) => b.score - b.cost - (a.score - a.cost));
}

const merit = (one: Beginning): number => logAdd(one.ending, one.underWay) - one.cost;
