import type { Page } from 'playwright-core';
import type { Placed } from '../../src/model/placed.ts';
import { midBand } from '../../src/model/profile.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { type BeamPair, block, gainFor, reAim, readMeter, setGain, turn } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import { Eye } from '../eye.ts';

/** A simulated hall, as the people at the two pages find it. They act only through the pages. */
export class Hall {
  readonly #eye = new Eye();

  constructor(
    public pair: BeamPair,
    private readonly rng: Rng,
    /** A button's label in the language of the page. */
    private readonly label: (english: string) => string = (english) => english,
  ) {}

  meterShows(): string {
    return readingText(readMeter(this.pair, Date.now(), this.rng), this.pair.spec.meter);
  }

  /** What an indicator without a number does against the last look. */
  lightDoes(): ReturnType<Eye['sees']> {
    return this.#eye.sees(this.pair, Date.now(), this.rng);
  }

  /** Does at the beam what an instruction asks, then presses the button that says so. */
  async workAt(emitter: Page, instruction: Placed<'instruction'>): Promise<void> {
    return press(emitter, this.label(this.work(instruction)));
  }

  /** Does it, and gives the label of the button that says so. */
  work({ advice: { action } }: Placed<'instruction'>): string {
    const now = Date.now();
    switch (action.kind) {
      case 'turn':
        this.pair = turn(this.pair, action.axis, action.eighths, now);
        return 'Done';
      case 'gain': {
        const { change, toward = change === 'full' ? undefined : midBand(this.pair.spec.meter) } = action;
        this.pair = setGain(this.pair, toward === undefined ? 0 : gainFor(this.pair, toward, now), now);
        return 'Gain is set';
      }
      case 're-aim':
        this.pair = reAim(this.pair, { horizontal: 0, vertical: 0 }, now);
        return 'Aimed';
      case 'block':
        this.pair = block(this.pair, true, now);
        return 'It is covered';
      case 'unblock':
        this.pair = block(this.pair, false, now);
        return 'It is clear';
      default:
        throw new Error(`the ladder was not expected to be asked: ${action.kind}`);
    }
  }
}

export const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

export async function typeReading(panel: Page, text: string): Promise<void> {
  await panel.getByLabel('Type the reading, or anything you would say').fill(text);
  await press(panel, 'Send');
}
