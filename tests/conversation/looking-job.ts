import type { Seat } from '../../src/model/facts.ts';
import { INDICATOR, midBand, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import { MOVE_MS, SAY_MS } from '../../src/simulator/crew.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { block, createBeamPair, gainFor, reAim, setGain, turn } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { Eye } from '../eye.ts';

export const LOOKING: JobSetup = {
  site: 'Quayside Hall 3',
  pair: 'B2',
  meter: INDICATOR,
  adjusters: NEUTRAL_ADJUSTERS,
  alone: 'looking',
};

/** More orders than any such job takes. */
const ORDERS = 400;

/** One person with one phone, who sees a lamp from the ladder and does and says what is asked, at a calm pair. */
export class LookingJob extends LoggedJob {
  readonly #rng = createRng(7);
  readonly #eye = new Eye();
  pair = createBeamPair(calmPair(INDICATOR, { horizontal: 7, vertical: -4 }));

  /** Where the hands report from. */
  protected readonly hands: Seat = 'panel';

  constructor(setup: JobSetup = LOOKING) {
    super('looking-00000000', Date.UTC(2026, 2, 3, 8));
    this.input({ kind: 'open', setup });
    this.input({ kind: 'seated', seat: 'panel', device: 'One phone', takeover: false });
  }

  get action() {
    return this.state.instruction?.advice.action;
  }

  /** What the lamp does now, as it would be said. */
  get light(): string {
    return this.#eye.sees(this.pair, this.now, this.#rng);
  }

  /** Goes on until `until` is true; throws where it does not come. */
  goOn(until: (job: LookingJob) => boolean): this {
    for (let i = 0; i < ORDERS && !until(this); i++) this.obey();
    if (!until(this)) throw new Error(`after ${ORDERS} orders: ${JSON.stringify(this.action)}`);
    return this;
  }

  protected look(): void {
    this.wait(SAY_MS);
    this.say('panel', this.light);
  }

  private obey(): void {
    const { action } = this;
    const act = (pair: typeof this.pair, word = 'done') => {
      this.pair = pair;
      this.wait(MOVE_MS);
      this.say(this.hands, word);
    };
    switch (action?.kind) {
      case 'turn':
        act(turn(this.pair, action.axis, action.eighths, this.now));
        break;
      case 'gain':
        act(setGain(this.pair, gainFor(this.pair, midBand(INDICATOR), this.now), this.now));
        break;
      case 're-aim':
        act(reAim(this.pair, { horizontal: 2, vertical: 1 }, this.now));
        break;
      case 'block':
        act(block(this.pair, true, this.now), 'blocked');
        break;
      case 'unblock':
        act(block(this.pair, false, this.now), 'clear');
        break;
      case 'hold':
        this.wait(action.until - this.now);
        break;
      case 'read':
        this.look();
        break;
      case 'offer-accept':
        this.say(this.hands, 'accept');
        break;
      default:
        throw new Error(`not expected: ${action?.kind}`);
    }
  }
}
