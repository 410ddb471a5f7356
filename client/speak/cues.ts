import type { Action } from '../../src/model/advice.ts';

/** The signals before words, or in their place. They differ in rhythm and timbre, not only in pitch. */
export type Cue = 'act' | 'hold' | 'settling' | 'stop' | 'ok';

/** One sound of a cue: a tone of some timbre, or a burst of noise. Times in ms, pitch in Hz. */
export interface Beep {
  at: number;
  for: number;
  hz: number;
  timbre: OscillatorType;
}

export interface CueSound {
  beeps: readonly Beep[];
  /** Milliseconds of vibration and pause in turn, as for `navigator.vibrate`. */
  buzz: readonly number[];
}

export const CUES: Readonly<Record<Cue, CueSound>> = {
  /** Do something: two quick clear blips, rising. */
  act: {
    beeps: [
      { at: 0, for: 90, hz: 660, timbre: 'triangle' },
      { at: 140, for: 140, hz: 990, timbre: 'triangle' },
    ],
    buzz: [90, 60, 160],
  },
  /** Hands off: one long soft tone. */
  hold: { beeps: [{ at: 0, for: 620, hz: 392, timbre: 'sine' }], buzz: [600] },
  /** It settles, in place of words: one short low tone, and no vibration. */
  settling: { beeps: [{ at: 0, for: 240, hz: 294, timbre: 'sine' }], buzz: [] },
  /** Stop: harsh, fast, four times. */
  stop: {
    beeps: [0, 130, 260, 390].map((at) => ({ at, for: 90, hz: 311, timbre: 'sawtooth' as const })),
    buzz: [120, 50, 120, 50, 120, 50, 120],
  },
  /** Good: three even steps of a chord. */
  ok: {
    beeps: [523, 659, 784].map((hz, i) => ({ at: i * 170, for: 150, hz, timbre: 'sine' as const })),
    buzz: [50, 120, 50, 120, 50],
  },
};

/** How long a cue lasts, ms. */
export const cueLength = (cue: Cue): number =>
  Math.max(...CUES[cue].beeps.map(({ at, for: length }) => at + length));

export function cueFor(action: Action): Cue {
  switch (action.kind) {
    case 'hold':
      return 'hold';
    case 'offer-accept':
    case 'finished':
      return 'ok';
    default:
      return 'act';
  }
}
