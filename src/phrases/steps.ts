import type { StepResult, TestStep } from '../model/steps.ts';

/** Steps that every visit of a site has. Common practice, no source; a site adds its own. */
export const STEPS_OF_EVERY_VISIT: readonly TestStep[] = [
  { cause: 'Mains of the panel switched off', effect: 'It runs on its battery and shows a fault' },
  { cause: 'Battery of the panel disconnected', effect: 'The panel shows a fault' },
  { cause: 'Line to the detector opened', effect: 'The panel shows a fault, and no alarm' },
  { cause: 'Line to the detector shorted', effect: 'The panel shows a fault, and no alarm' },
];

export const STEP_RESULTS: Record<StepResult, string> = {
  passed: 'passed',
  failed: 'FAILED',
  'not-done': 'not done',
};
export const NOT_ANSWERED = 'not answered';
export const NO_STEPS = 'No steps of cause and effect belong to this visit.';

/** On the button that goes on without writing. `stands`: something was written before. */
export const leftOutText = (stands: boolean, isStep: boolean): string => {
  if (stands) return 'Keep it so, go on';
  return isStep ? 'Leave it open, go on' : 'Not known, go on';
};

export const STEP_COLUMNS = {
  cause: 'What is done',
  effect: 'What must happen',
  result: 'Result',
} as const;

export const stepText = (cause: string, result: StepResult, note: string | undefined): string =>
  `${cause}: ${STEP_RESULTS[result]}${note === undefined ? '' : `, ${note}`}`;

export const stepsDefinedText = (count: number): string =>
  `Steps of cause and effect defined: ${count === 0 ? 'none' : count}`;

export const STEPS_SAVED = 'They belong to visits that begin from now on.';
