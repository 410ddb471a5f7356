import type { Seq } from '../model/ids.ts';
import type { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import type { PathState } from '../model/reports.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import type { History } from './history.ts';
import type { Missing } from './missing.ts';
import type { PerAxis, Sample, Turn } from './sample.ts';
import { type Pointing, START_POINTING } from './slack.ts';
import { newStay, type Stay, settled } from './stay.ts';

/** The blocking check at one position and gain: what was read before, during and after. */
export interface Blocking {
  readonly before?: Sample;
  /** A reading came while the path was blocked: did it go to nothing? */
  readonly dark?: boolean;
  readonly seqs: readonly Seq[];
}

/** How the alignment was accepted. `backed`: all evidence was there. */
export interface Acceptance {
  readonly seq: Seq;
  readonly reading: Reading;
  readonly backed: boolean;
  readonly missing: readonly Missing[];
  readonly reason?: string;
}

/** All that is known of one alignment. Plain data, a fold over its events. */
export interface Search {
  readonly meter: MeterProfile;
  readonly adjusters: AdjusterProfile;
  readonly history: History | undefined;
  readonly turned: PerAxis<Eighths>;
  readonly pointing: PerAxis<Pointing>;
  /** Direction of each screw's last turn, 0 before the first. */
  readonly lastTurn: PerAxis<-1 | 0 | 1>;
  /** Turns made so far, and the newest of them. */
  readonly moves: number;
  readonly lastMove: { readonly seq: Seq; readonly turn: Turn } | undefined;
  /** The gain setting, counted up with each change, and whether it is known to be full. */
  readonly gain: number;
  readonly gainFull: boolean;
  /** Which way the newest of these changes went; 0 where nobody said. */
  readonly gainWay: -1 | 0 | 1;
  readonly path: PathState;
  readonly stay: Stay;
  /** Settled readings of earlier stays since the last aim by eye, oldest first; only the newest are kept. */
  readonly samples: readonly Sample[];
  /** The adjuster being worked on: the last one turned or chosen. */
  readonly axis: Axis;
  /** How far each screw was found to go, eighths from the start. */
  readonly limits: PerAxis<{ readonly low: Eighths; readonly high: Eighths }>;
  /** How many times the emitter was brought onto the receiver by eye. */
  readonly aims: number;
  /** How many cause lists were worked through since the last settled signal. */
  readonly checks: number;
  readonly blocking: Blocking;
  /** What ended the last stay: a reading can be doubted for a wrong turn only if there was one. */
  readonly touched: 'nothing' | 'move' | 'gain' | 'other';
  /** Entries that were doubted and stand. */
  readonly confirmed: readonly Seq[];
  /** Readings before this entry are not comparable with those after it: something changed unseen between. */
  readonly restartedAt: Seq;
  readonly restarts: number;
  /** The newest reading that stands and that nothing explains, unless a new start was made for it. */
  readonly odd: Seq | undefined;
  readonly accepted: Acceptance | undefined;
}

export function startSearch(meter: MeterProfile, adjusters: AdjusterProfile): Search {
  const limit = { low: -adjusters.travel, high: adjusters.travel };
  return {
    meter,
    adjusters,
    history: undefined,
    turned: { horizontal: 0, vertical: 0 },
    pointing: { horizontal: START_POINTING, vertical: START_POINTING },
    lastTurn: { horizontal: 0, vertical: 0 },
    moves: 0,
    lastMove: undefined,
    gain: 0,
    gainFull: false,
    gainWay: 0,
    path: 'clear',
    stay: newStay(0),
    samples: [],
    axis: 'horizontal',
    limits: { horizontal: limit, vertical: limit },
    aims: 0,
    checks: 0,
    blocking: { seqs: [] },
    touched: 'nothing',
    confirmed: [],
    restartedAt: 0,
    restarts: 0,
    odd: undefined,
    accepted: undefined,
  };
}

// The same sample however often it is asked for: what was learnt with it then holds after the stay, too.
const heres = new WeakMap<Search, { readonly sample: Sample | undefined }>();

/** The stay's settled reading as a sample, if it has one and the beam was free. */
export function sampleHere(search: Search): Sample | undefined {
  const known = heres.get(search);
  if (known) return known.sample;
  const { turned, pointing, gain } = search;
  const here = search.path === 'clear' ? settled(search.stay, search.meter) : undefined;
  const sample = here && { ...here, turned, pointing, gain };
  heres.set(search, { sample });
  return sample;
}
