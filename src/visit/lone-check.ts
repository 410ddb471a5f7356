/**
 * What the phone of a person alone does when nothing was heard from them: it asks, asks louder, and then shows and sends
 * what was agreed. It promises no rescue. All times in milliseconds of one clock.
 */
export type LoneCheck = 'quiet' | 'ask' | 'ask-louder' | 'nobody-answers';

/** Between the first question, the louder one and the end. Common practice, no source. */
export const ANSWER_WITHIN_MS = 60_000;

/** `heardAt`: the last word, touch or report of that person; `everyMs`: how long they said that they may be silent. */
export function loneCheck(heardAt: number, now: number, everyMs: number): LoneCheck {
  const silent = now - heardAt;
  if (silent < everyMs) return 'quiet';
  if (silent < everyMs + ANSWER_WITHIN_MS) return 'ask';
  return silent < everyMs + 2 * ANSWER_WITHIN_MS ? 'ask-louder' : 'nobody-answers';
}

/** How often a question or the end is said again: each time after a longer pause, so that it does not become noise. */
const PAUSES_MS: readonly number[] = [15_000, 20_000, 30_000, 60_000];

/** When, after the question began, it is to be said for the `times`th time. The first at once. */
export const saidAfterMs = (times: number): number =>
  Array.from({ length: times }, (_, i) => PAUSES_MS[Math.min(i, PAUSES_MS.length - 1)] ?? 0).reduce(
    (sum, pause) => sum + pause,
    0,
  );
