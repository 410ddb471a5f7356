import type { Action } from '../../../src/model/advice.ts';
import type { Seat } from '../../../src/model/facts.ts';
import type { JobSetup } from '../../../src/model/setup.ts';
import { readingText } from '../../../src/phrases/readings.ts';
import {
  type BeamPair,
  block,
  gainFor,
  reAim,
  readMeter,
  setGain,
  turn,
} from '../../../src/simulator/pair.ts';
import type { Rng } from '../../../src/simulator/rng.ts';

/** Two people at a simulated pair. Plain data, so that it can go from one program to the next. */
export interface Aligning {
  readonly setup: JobSetup;
  readonly pair: BeamPair;
  /** Since the visit began, ms. */
  readonly at: number;
}

interface Saying {
  readonly seat: Seat;
  readonly text: string;
  readonly pair: BeamPair;
}

/**
 * What the crew does and says next. It follows the advice; whenever the pair is aligned somebody knocks the mount, so that it never
 * ends. `action`: of the present instruction, if there is one.
 */
export function nextSaying({ pair, at }: Aligning, action: Action | undefined, rng: Rng): Saying {
  const emitter = (after: BeamPair, text = 'done'): Saying => ({ seat: 'emitter', text, pair: after });
  switch (action?.kind) {
    case 'turn':
      return emitter(turn(pair, action.axis, action.eighths, at));
    case 'gain':
      return emitter(setGain(pair, action.toward === undefined ? 0 : gainFor(pair, action.toward, at), at));
    case 're-aim':
      return emitter(reAim(pair, anywhere(pair, rng), at));
    case 'block':
      return emitter(block(pair, true, at), 'blocked');
    case 'unblock':
      return emitter(block(pair, false, at), 'clear');
    case 'check':
    case 'confirm-item':
      return emitter(pair);
    case 'offer-accept':
    case 'finished':
      return emitter(reAim(pair, anywhere(pair, rng), at), 'the bracket has moved');
    default:
      return { seat: 'panel', text: readingText(readMeter(pair, at, rng), pair.spec.meter), pair };
  }
}

/** As far from the middle as an aim by eye may end. */
function anywhere({ spec }: BeamPair, rng: Rng): { horizontal: number; vertical: number } {
  const [angle, off] = [2 * Math.PI * rng(), spec.aimRadius * Math.sqrt(rng())];
  return { horizontal: off * Math.cos(angle), vertical: off * Math.sin(angle) };
}
