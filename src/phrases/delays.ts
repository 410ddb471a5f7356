import { RESTORE_S } from '../visit/verdict.ts';
import { fixedBeside, setText } from './beside-limits.ts';

/** Figures of a proving test in seconds. What was judged by a limit is shown on its side of it. */
interface Delay {
  readonly delay?: number | undefined;
  readonly tolerance?: number | undefined;
}

/** From "covered" to what the panel showed: "17.0 s". */
export function elapsedText(elapsed: number, { delay, tolerance = 0 }: Delay): string {
  const limits = delay === undefined ? [] : [delay - tolerance, delay + tolerance];
  return `${fixedBeside(elapsed, limits, 1)} s`;
}

/** "15.0 s" */
export const setDelayText = (seconds: number): string => `${setText(seconds, 1)} s`;

/** From "clear" to normal. */
export const restoredText = (seconds: number): string => `${fixedBeside(seconds, [RESTORE_S], 1)} s`;
