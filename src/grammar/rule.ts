import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import type { Trend } from '../model/reports.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import type { Intent, Way } from './intent.ts';
import { type Captures, type Part, readPattern } from './pattern.ts';

/** What is known about the meter when the words are heard. It decides what the words alone leave open. */
export interface Context {
  readonly meter?: Pick<MeterProfile, 'min' | 'max' | 'unit'>;
  /** The crew was asked about a turn: the name of an adjuster says which one was turned. */
  readonly asksTurn?: boolean;
}

/** What was said of a turn of an adjuster. */
export interface Turned {
  axis?: Axis;
  eighths?: Eighths;
  way?: Way;
}

/** The rules of the grammar, each with the type of what it means. */
export interface Meanings {
  // Numbers. `zero` to `runs` mean their digits, as text, so that they can be joined.
  zero: string;
  unit: string;
  head: string;
  digit: string;
  upToTwo: string;
  upToThree: string;
  upToFive: string;
  run: string;
  decimals: string;
  teen: number;
  tens: number;
  two: number;
  small: number;
  rest: number;
  century: number;
  hundreds: number;
  thousands: number;
  whole: number;
  number: number;
  doubtful: number;
  figure: number;
  /** The small words of the other languages, see `src/languages/frame.ts`. */
  minus: true;
  point: true;
  andHalf: true;
  and: true;
  to: true;
  not: true;
  /** A number typed in digits. Matched by the tokens themselves, not by words. */
  numeral: number;
  /** A fraction typed in digits ("1/4"), in whole turns. Matched by the tokens themselves. */
  fraction: number;
  measure: string;

  // Turns.
  axis: Axis;
  at: Axis;
  /** Clockwise or anticlockwise. */
  round: Way;
  sense: Way;
  way: Way;
  part: Eighths;
  turns: Eighths;
  size: Turned;
  turned: Turned;
  toVerb: true;

  // What is reported.
  state: Reading;
  lead: true;
  near: true;
  rough: number;
  quantity: number;
  bare: Reading;
  introduced: Reading;
  reading: Reading;
  trend: Trend;
  level: Intent[];
  moved: Intent;
  gain: Intent;
  aim: number;
  graded: Intent;
  grade: number;
  path: Intent;
  panel: Intent;
  whom: string;
  informed: Intent;
  done: Intent;
  fixed: Intent[];
  effect: Intent;
  before: Intent[];
  assent: Intent;
  pause: Intent;
  gained: Intent[];
  act: Intent[];
  report: Intent[];

  // What is asked or answered.
  correcting: true;
  correct: Intent;
  yes: Intent;
  command: Intent;
  sorry: true;
  slip: Intent;
  mishap: Intent;
  body: Intent[];
  sentence: Intent[];
}
export type RuleName = keyof Meanings;

/** Several meanings of the same words: a question, never a guess. */
export class Either<T> {
  readonly meanings: readonly T[];
  constructor(meanings: readonly T[]) {
    this.meanings = meanings;
  }
}
export const either = <T>(...meanings: T[]): Either<T> => new Either(meanings);

/** One way to say something, and what it means. */
export interface Wording<T> {
  readonly part: Part;
  /** Undefined: these words mean nothing, e.g. a turn that is not a number of eighths. */
  meaning(captures: Readonly<Record<string, unknown>>, context: Context): T | Either<T> | undefined;
  /** It joins clauses; used only where the words cannot be one clause. */
  readonly joins: boolean;
  /** Understood only to ask about it; not a sentence to teach or practise. */
  readonly doubtful: boolean;
}

export type Rules = { readonly [R in RuleName]?: readonly Wording<Meanings[R]>[] };

/** A wording with its meaning, or with the function that makes the meaning from what the pattern captured. */
export const say = <S extends string, T>(
  pattern: S,
  meaning: (captures: Captures<S, Meanings>, context: Context) => T | Either<T> | undefined,
): Wording<T> => ({
  part: readPattern(pattern),
  meaning: meaning as Wording<T>['meaning'],
  joins: false,
  doubtful: false,
});

/** A wording that joins clauses: "vertical one" is the vertical one, not vertical and a 1. */
export const join = <S extends string, T>(
  pattern: S,
  meaning: (captures: Captures<S, Meanings>, context: Context) => T | Either<T> | undefined,
): Wording<T> => ({ ...say(pattern, meaning), joins: true });

/** A wording that can mean several things. */
export const doubt = <S extends string, T>(
  pattern: S,
  meaning: (captures: Captures<S, Meanings>, context: Context) => T | Either<T> | undefined,
): Wording<T> => ({ ...say(pattern, meaning), doubtful: true });

/** Joined clauses that can mean several things. */
export const doubtfulJoin = <S extends string, T>(
  pattern: S,
  meaning: (captures: Captures<S, Meanings>, context: Context) => T | Either<T> | undefined,
): Wording<T> => ({ ...say(pattern, meaning), joins: true, doubtful: true });

/** Wordings that all mean the same. */
export const means = <T>(value: T, ...patterns: string[]): Wording<T>[] =>
  patterns.map((pattern) => say<string, T>(pattern, () => value));

/** Leaves out what was not said. */
export const said = <T extends object>(fields: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
