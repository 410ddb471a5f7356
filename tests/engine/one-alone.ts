import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL } from '../../src/model/reading.ts';
import type { Axis } from '../../src/model/turns.ts';
import { DECIBELS } from './crew-of-two.ts';

/** A person who sees a Gaussian beam (a parabola in decibels) and tells changes of more than 0.4 dB. */
export class Alone {
  search: Search = startSearch(DECIBELS, NEUTRAL_ADJUSTERS, { byTrends: true });
  at = 0;
  seq = 0;
  turns = 0;
  place = { horizontal: 0, vertical: 0 };
  private before: number | undefined;
  private covered = false;

  constructor(
    readonly peak: Record<Axis, number>,
    readonly half = 8,
    readonly reflects = false,
  ) {}

  /** How far the light here is below its best, dB. */
  get drop(): number {
    return this.below(this.place.horizontal - this.peak.horizontal, this.place.vertical - this.peak.vertical);
  }

  /** The same so far from the peak. */
  protected below(horizontal: number, vertical: number): number {
    return 3 * (Math.hypot(horizontal, vertical) / this.half) ** 2;
  }

  tell(fact: SearchFact): void {
    this.at += 5_000;
    this.search = observe(this.search, { seq: this.seq++, at: this.at, fact });
  }

  look(): void {
    const change = (this.before ?? this.drop) - this.drop;
    this.before = this.drop;
    if (this.covered && !this.reflects) this.tell({ type: 'reading', reading: NO_SIGNAL });
    else this.tell({ type: 'trend', trend: change > 0.4 ? 'rising' : change < -0.4 ? 'falling' : 'steady' });
  }

  turn(axis: Axis, eighths: number): void {
    this.place = { ...this.place, [axis]: this.place[axis] + eighths };
    this.turns += 1;
    this.tell({ type: 'move', axis, eighths });
  }

  /** Does what it is told, until `until` is true. */
  follow(until: (search: Search) => boolean): void {
    for (let i = 0; i < 300 && !until(this.search); i++) {
      const { action } = advise(this.search, this.at).advice;
      if (action.kind === 'turn') this.turn(action.axis, action.eighths);
      // By eye, so near the place where it pointed; here it is the very place.
      else if (action.kind === 're-aim') this.tell({ type: 're-aimed' });
      else if (action.kind === 'read') this.look();
      else if (action.kind === 'hold') this.at = Math.max(this.at, action.until);
      else if (action.kind === 'block' || action.kind === 'unblock') {
        this.covered = action.kind === 'block';
        this.tell({ type: 'path', state: this.covered ? 'blocked' : 'clear' });
      } else if (action.kind === 'offer-accept') this.tell({ type: 'accept', reading: NO_SIGNAL });
      else return;
    }
  }
}
