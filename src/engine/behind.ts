import { AXES, type Eighths } from '../model/turns.ts';
import { inGain } from './bridged.ts';
import type { PerAxis, Sample } from './sample.ts';
import type { Search } from './search.ts';

/**
 * If the reading with the path blocked is this far below the one without, the light that is left does not matter, dB. It
 * passes beside the card, so smoke in the direct line dims only the rest: with a part `r` of the light left, an alarm set
 * to the obscuration `x` comes at `x / (1 - r)`. At 13 dB `r` is 5 %, and 35 % becomes 36.8 %.
 */
export const DARK_DB = 13;

/** What was read behind the card is dark against this place too, though the gain was set in between. */
export function isGoneBehind({ blocking: { behind }, samples }: Search, here: Sample): boolean {
  if (!behind || behind.gain === here.gain) return true;
  const [there] = inGain([behind, ...samples, here], here.gain).filter((s) => s.seqs === behind.seqs);
  return there !== undefined && here.level.kind === 'level' && here.level.db - there.level.db > DARK_DB;
}

/** So near to it, what was read behind the card counts for a place too. Eighths, as for all that acceptance rests on. */
const SAME = 1;

export const isStillDark = ({ blocking: { behind } }: Search, turned: PerAxis<Eighths>): boolean =>
  behind !== undefined && AXES.every((axis) => Math.abs(turned[axis] - behind.turned[axis]) <= SAME);
