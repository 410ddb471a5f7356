import type { Missing } from '../engine/missing.ts';
import { hasNoNumbers } from '../model/alone.ts';
import type { JobSetup } from '../model/setup.ts';
import { figuresText } from './figures.ts';
import { LOOK_NEEDS } from './looking.ts';

export const NEEDS: Record<Missing['id'], string> = {
  'settled-reading': 'a settled reading here',
  'clear-path': 'a clear path',
  'not-saturated': 'a reading that is not saturated: lower the gain',
  'in-band': 'a reading in the band',
  'bracket-horizontal': 'lower settled readings on both sides of the horizontal peak, at this gain',
  'bracket-vertical': 'lower settled readings on both sides of the vertical peak, at this gain',
  'at-peak': 'the adjusters at the peak, and a reading next to it',
  'second-peak': 'a reading where a stronger peak may be',
  'highest-reading': 'the highest reading seen at this gain',
  'blocking-check': 'the blocking check: blocked, the reading must go to nothing and come back the same',
  'steady-hold': 'a reading that holds steady',
  'fresh-reading': 'a fresh reading',
  'settled-doubt': 'an answer to the open question',
  untouched: 'an alignment that nobody touched on this visit',
  care: 'an answer whether the windows were cleaned',
  'as-last-left': 'the signal that the last visit left',
};

/** One thing that acceptance still needs, with its figures. */
export function needText({ id, figures }: Missing, { meter, alone }: Job): string {
  const rests = figuresText(figures, meter);
  const need = (hasNoNumbers(alone) && LOOK_NEEDS[id]) || NEEDS[id];
  return rests ? `${need} (${rests})` : need;
}

type Job = Pick<JobSetup, 'meter' | 'alone'>;

/** "Not yet. Missing: a settled reading here." */
export function notProvenText(missing: readonly Missing[], job: Job): string {
  const needs = missing.map((item) => needText(item, job));
  return `Not yet. Missing: ${needs.join('; ')}.`;
}
