import { maySee } from '../engine/looks.ts';
import { hasNoNumbers } from '../model/alone.ts';
import { NO_NUMBER_HERE, TOO_SOON } from '../phrases/looking.ts';
import { searchOf } from '../visit/search.ts';
import type { Composer } from './composer.ts';

/** What is wrong with a word for what the light does, where no number is read; undefined where it counts, or numbers do. */
export function lookRefused(job: Composer): string | undefined {
  const search = hasNoNumbers(job.state.setup?.alone) ? searchOf(job.state) : undefined;
  return search && !maySee(search, job.now) ? TOO_SOON : undefined;
}

/** A number was said where nobody reads one. */
export const numberRefused = ({ state }: Composer): string | undefined =>
  hasNoNumbers(state.setup?.alone) ? NO_NUMBER_HERE : undefined;
