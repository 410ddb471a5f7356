import { type Before, sense } from '../../src/indicator/sense.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import { INDICATOR } from '../../src/model/profile.ts';
import type { Profile, SensorLook } from '../../src/model/sensor.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { SENSED_WORDS } from '../../src/phrases/buttons.ts';
import { readMeter } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { lastLook } from '../../src/visit/last-look.ts';
import { countedOf } from '../../src/visit/state.ts';
import { LOOKING, LookingJob } from './looking-job.ts';

export const SENSING: JobSetup = { ...LOOKING, alone: 'sensing' };
/** A tone that grows by 30 dB from where the meter would leave its bottom to its top. */
export const TAUGHT: Profile = { feature: 'level', some: -40, plenty: -10, sd: 0.2 };

/** One person on the ladder of a calm pair, and a propped phone that hears a tone there. */
export class SensingJob extends LookingJob {
  readonly #rng = createRng(9);
  protected override readonly hands: Seat = 'emitter';

  constructor(taught: Profile | 'nothing' = TAUGHT) {
    super(SENSING);
    this.input({ kind: 'seated', seat: 'emitter', device: 'Carried', takeover: false });
    if (taught !== 'nothing') this.teach(taught);
  }

  teach(taught: Profile): void {
    this.input({ kind: 'sensor', seat: 'panel', sort: 'tone', state: 'sensing', taught });
  }

  /** The last word that counts, as the phone holds the next one against it. */
  get base(): { against: Seq; before: Before } | undefined {
    const last = lastLook(countedOf(this.state));
    const said = last?.from === undefined ? undefined : this.entries[last.from]?.fact;
    const place = said?.type === 'said' ? said.sensor?.place : undefined;
    const before = last?.seen === 'light' ? place : last?.seen;
    return last?.from === undefined || before === undefined ? undefined : { against: last.from, before };
  }

  /** Tells a word as the phone does. */
  tell(text: string, more: Partial<SensorLook> = {}): void {
    const sensor: SensorLook = { sort: 'tone', moments: 30, ...more };
    const re = this.state.instruction?.seq;
    const words = { kind: 'words', seat: 'panel', via: 'button', text, sensor } as const;
    this.input({ ...words, ...(re !== undefined && { re }) });
  }

  protected override look(): void {
    this.wait(3_000);
    const shown = readMeter(this.pair, this.now, this.#rng);
    const { lostAt, saturatedAt } = INDICATOR;
    const share = shown.kind === 'value' ? (shown.value - lostAt) / (saturatedAt - lostAt) : 1;
    const level = { value: -40 + 30 * share, sd: 0.2 };
    const { base } = this;
    const now = sense(TAUGHT, shown.kind === 'none' ? {} : { level }, base?.before);
    if (!now) throw new Error('nothing to tell');
    const { word, place } = now;
    this.tell(SENSED_WORDS[word], {
      ...(place !== undefined && { place }),
      ...(base && { against: base.against }),
    });
  }
}
