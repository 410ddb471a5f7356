import type { Turn } from '../engine/sample.ts';
import type { Question } from '../model/advice.ts';
import { countedOf, type JobState } from './state.ts';

/** The turn as it was reported, where the question is whether it was made so; undefined where it names another. */
export function turnAskedAbout(
  state: JobState,
  { about, options: [only, ...more] }: Extract<Question, { kind: 'which-move' }>,
): Turn | undefined {
  const fact = countedOf(state).find(({ seq }) => seq === about);
  if (fact?.type !== 'move' || !only || more.length > 0) return undefined;
  return fact.axis === only.axis && fact.eighths === only.eighths ? only : undefined;
}
