import type { Trend } from '../src/model/reports.ts';
import { type BeamPair, lightDb, readMeter } from '../src/simulator/pair.ts';
import type { Rng } from '../src/simulator/rng.ts';

/** A change of light that an eye tells, dB: between those of `src/simulator/crew.ts`. */
const TELLS_DB = 0.4;

/** Somebody who sees a lamp that follows the light of a simulated pair, and reads no number. */
export class Eye {
  private before: number | undefined;

  /** What it does against the last look. */
  sees(pair: BeamPair, at: number, rng: Rng): Trend | 'no signal' | 'saturated' {
    const shown = readMeter(pair, at, rng);
    if (shown.kind === 'none') return 'no signal';
    if (shown.kind === 'saturated') return 'saturated';
    const now = lightDb(pair, at);
    const change = now - (this.before ?? now);
    this.before = now;
    return change > TELLS_DB ? 'rising' : change < -TELLS_DB ? 'falling' : 'steady';
  }
}
