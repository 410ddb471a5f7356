import { maySee } from '../engine/looks.ts';
import { hasNoNumbers } from '../model/alone.ts';
import { SENSOR_TELLS } from '../phrases/indicator.ts';
import { NO_NUMBER_HERE, TOO_SOON, UNDO_FIRST } from '../phrases/looking.ts';
import { isHeldRight } from '../visit/last-look.ts';
import { searchOf } from '../visit/search.ts';
import { waitsForPerson } from '../visit/state.ts';
import type { Composer } from './composer.ts';
import type { Speaker } from './speaker.ts';

/** What is wrong with a word for what the light does, where no number is read; undefined where it counts, or numbers do. */
export function lookRefused(job: Composer, { sensor }: Speaker): string | undefined {
  if (job.state.setup?.alone === 'sensing' && !sensor) return SENSOR_TELLS;
  const search = hasNoNumbers(job.state.setup?.alone) ? searchOf(job.state) : undefined;
  return search && !maySee(search, job.now) ? TOO_SOON : undefined;
}

/** A look is corrected where only looks count. */
export const correctionRefused = ({ state }: Pick<Composer, 'state'>): string | undefined =>
  state.setup?.alone === 'looking' ? UNDO_FIRST : numberRefused({ state });

/** A number was said where nobody reads one. */
export const numberRefused = ({ state }: Pick<Composer, 'state'>): string | undefined =>
  state.setup?.alone === 'sensing'
    ? SENSOR_TELLS
    : hasNoNumbers(state.setup?.alone)
      ? NO_NUMBER_HERE
      : undefined;

/**
 * Whether the word of a phone that follows a tone or a lamp counts: it was taught, held its word against the last one that
 * counts, and the hands were off long enough. Where not, nobody is asked: the phone goes on, and tells again.
 */
export function mayCount(job: Composer, { sensor }: Speaker): boolean {
  const { state, now } = job;
  const search = state.setup?.alone === 'sensing' ? searchOf(state) : undefined;
  if (!search || !sensor || waitsForPerson(state)) return false;
  return isHeldRight(sensor, state) && maySee(search, now);
}
