/** What an acoustic model says about an utterance: how likely each token is, for each frame of sound. */
export interface Logits {
  /** frames × tokens, row by row; any scale that a softmax takes. */
  readonly data: Float32Array;
  readonly frames: number;
  readonly tokens: number;
}

/** Which token is which, of a model that writes letters (connectionist temporal classification). */
export interface Alphabet {
  /** The token for "nothing new". */
  readonly blank: number;
  /** The token between words. */
  readonly space: number;
  /** Token by letter: a to z and the apostrophe, in lower case. */
  readonly letters: ReadonlyMap<string, number>;
}

/** Natural logarithms of probabilities, each row adds up to one. */
export function logSoftmax({ data, frames, tokens }: Logits): Float64Array {
  const out = new Float64Array(frames * tokens);
  for (let at = 0; at < out.length; at += tokens) {
    const row = data.subarray(at, at + tokens);
    const top = row.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    const norm = top + Math.log(row.reduce((sum, x) => sum + Math.exp(x - top), 0));
    for (let i = 0; i < tokens; i++) out[at + i] = (row[i] as number) - norm;
  }
  return out;
}

/** log(e^a + e^b) */
export function logAdd(a: number, b: number): number {
  if (a === Number.NEGATIVE_INFINITY) return b;
  if (b === Number.NEGATIVE_INFINITY) return a;
  return a > b ? a + Math.log1p(Math.exp(b - a)) : b + Math.log1p(Math.exp(a - b));
}
