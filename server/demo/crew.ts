import type { Action } from '../../src/model/advice.ts';
import type { Placed } from '../../src/model/placed.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { type BeamPair, block, gainFor, reAim, readMeter, setGain, turn } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import type { Clock } from '../process/clock.ts';
import type { Phone } from './phone.ts';

/** How long a person needs, ms: for a move on the ladder, for a look at the meter. Common practice, no source. */
const MOVE_MS = 6_000;
const LOOK_MS = 2_500;

/** From this reading on, one is said wrong and then corrected, so that the log shows a correction. */
const SLIP_FROM = 4;

/** Two people who follow the advice at a simulated beam pair. */
export class DemoCrew {
  #answered = -1;
  #readings = 0;
  #slipped = false;
  #finish: () => void = () => {};
  /** Settles when the pair is accepted. */
  readonly finished = new Promise<void>((resolve) => {
    this.#finish = resolve;
  });

  constructor(
    public pair: BeamPair,
    private readonly panel: Phone,
    private readonly emitter: Phone,
    private readonly clock: Clock,
    private readonly rng: Rng,
  ) {
    panel.onChange(() => this.#look());
  }

  #look(): void {
    const { instruction } = this.panel.state;
    if (!instruction || instruction.seq <= this.#answered) return;
    this.#answered = instruction.seq;
    this.#react(instruction);
  }

  #react({ seq, advice: { action } }: Placed<'instruction'>): void {
    const stillCurrent = () => this.panel.state.instruction?.seq === seq;
    switch (action.kind) {
      case 'read':
      case 'hold':
        this.#later(LOOK_MS, () => stillCurrent() && this.#read());
        break;
      case 'ask':
        this.#later(LOOK_MS, () => this.#read());
        break;
      case 'offer-accept':
        this.#later(LOOK_MS, () => this.panel.say('accept'));
        break;
      case 'finished':
        this.#finish();
        break;
      default:
        this.#later(MOVE_MS, () => this.emitter.say(this.#work(action)));
    }
  }

  /** Does what the instruction asks on the ladder, and returns what the person says then. */
  #work(action: Action): string {
    const at = this.clock.now();
    switch (action.kind) {
      case 'turn':
        this.pair = turn(this.pair, action.axis, action.eighths, at);
        break;
      case 'gain': {
        const { toward } = action;
        this.pair = setGain(this.pair, toward === undefined ? 0 : gainFor(this.pair, toward, at), at);
        break;
      }
      case 're-aim':
        this.pair = reAim(this.pair, { horizontal: 0, vertical: 0 }, at);
        break;
      case 'block':
        this.pair = block(this.pair, true, at);
        return 'blocked';
      case 'unblock':
        this.pair = block(this.pair, false, at);
        return 'clear';
    }
    return 'done';
  }

  #read(): void {
    const { meter } = this.pair.spec;
    const text = readingText(readMeter(this.pair, this.clock.now(), this.rng), meter);
    this.#readings += 1;
    const slip = transposed(text);
    const slips = !this.#slipped && this.#readings >= SLIP_FROM && slip !== text;
    this.#slipped ||= slips;
    this.panel.say(slips ? slip : text);
    if (slips) this.#later(LOOK_MS, () => this.panel.say(`wrong, ${text}`));
  }

  #later(ms: number, action: () => void): void {
    this.clock.after(ms, action);
  }
}

/** The last two digits swapped, as a tired reader says them. */
const transposed = (text: string): string => text.replace(/(\d)(\d)$/, '$2$1');
