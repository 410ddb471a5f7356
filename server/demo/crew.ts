import type { Action } from '../../src/advice.ts';
import type { Placed } from '../../src/job/state.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { type BeamPair, block, gainFor, reAim, readMeter, setGain, turn } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import type { Clock } from '../clock.ts';
import type { Phone } from './phone.ts';

/** How long a person takes, ms: a move on the ladder, and a look at the meter. Common practice, no source. */
const MOVE_MS = 6_000;
const LOOK_MS = 2_500;

/** Which of the panel's readings is first said wrong and then put right, so that the log shows how. */
const MISREAD = 4;

/** Two people who do as they are told at a simulated beam pair. */
export class DemoCrew {
  #answered = -1;
  #readings = 0;
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
        return this.#later(LOOK_MS, () => stillCurrent() && this.#read());
      case 'ask':
        return this.#later(LOOK_MS, () => this.#read());
      case 'offer-accept':
        return this.#later(LOOK_MS, () => this.panel.say('accept'));
      case 'finished':
        return this.#finish();
      default:
        return this.#later(MOVE_MS, () => this.#work(action));
    }
  }

  /** The ladder's side of an instruction. */
  #work(action: Action): void {
    const at = this.clock.now();
    switch (action.kind) {
      case 'turn':
        this.pair = turn(this.pair, action.axis, action.eighths, at);
        return this.emitter.say('done');
      case 'gain':
        this.pair = setGain(
          this.pair,
          action.toward === undefined ? 0 : gainFor(this.pair, action.toward, at),
          at,
        );
        return this.emitter.say('done');
      case 'block':
      case 'unblock':
        this.pair = block(this.pair, action.kind === 'block', at);
        return this.emitter.say(action.kind === 'block' ? 'blocked' : 'clear');
      case 're-aim':
        this.pair = reAim(this.pair, { horizontal: 0, vertical: 0 }, at);
        return this.emitter.say('done');
      default:
        return this.emitter.say('done');
    }
  }

  #read(): void {
    const { meter } = this.pair.spec;
    const text = readingText(readMeter(this.pair, this.clock.now(), this.rng), meter);
    this.#readings += 1;
    if (this.#readings !== MISREAD) return this.panel.say(text);
    this.panel.say(transposed(text));
    this.#later(LOOK_MS, () => this.panel.say(`wrong, ${text}`));
  }

  #later(ms: number, action: () => void): void {
    this.clock.after(ms, action);
  }
}

/** The last two digits the wrong way round, as a tired reader says them. */
const transposed = (text: string): string => text.replace(/(\d)(\d)$/, '$2$1');
