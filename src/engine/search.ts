import type { Seq } from '../model/ids.ts';
import type { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import type { PathState } from '../model/reports.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import type { History } from './history.ts';
import type { Look } from './looks.ts';
import type { Missing } from './missing.ts';
import type { PerAxis, Sample, Turn } from './sample.ts';
import { type Pointing, START_POINTING } from './slack.ts';
import { newStay, type Stay, settled } from './stay.ts';

/** The blocking check at one position and gain: what was read before, during and after. */
export interface Blocking {
  readonly before?: Sample;
  /** There was a reading while the path was blocked: was the light gone? */
  readonly dark?: boolean;
  /** Of a person who walks: what was read while it was blocked. */
  readonly behind?: Sample;
  readonly seqs: readonly Seq[];
}

/** How the alignment was accepted. `backed`: with all the evidence. */
export interface Acceptance {
  readonly seq: Seq;
  readonly reading: Reading;
  readonly backed: boolean;
  readonly missing: readonly Missing[];
  readonly reason?: string;
}

/** Everything known about one alignment. Plain data, a fold over its events. */
export interface Search {
  readonly meter: MeterProfile;
  readonly adjusters: AdjusterProfile;
  readonly history: History | undefined;
  readonly turned: PerAxis<Eighths>;
  readonly pointing: PerAxis<Pointing>;
  /** Direction of each screw's last turn, 0 before the first. */
  readonly lastTurn: PerAxis<-1 | 0 | 1>;
  /** Turns made so far, those of each screw since the last aim by eye, and the newest of them. */
  readonly moves: number;
  readonly turns: PerAxis<number>;
  readonly lastMove: { readonly seq: Seq; readonly turn: Turn } | undefined;
  /** The newest turns, the last first. One that was corrected is sure. */
  readonly made: readonly { readonly seq: Seq; readonly turn: Turn; readonly corrected: boolean }[];
  /** The gain setting, one more with each change, and whether it is known to be full. */
  readonly gain: number;
  readonly gainFull: boolean;
  /** Direction of the newest of these changes; 0 if nobody said. */
  readonly gainWay: -1 | 0 | 1;
  /** The direction in which it could not be set, until it is set or its cause was looked into. */
  readonly gainStuck: -1 | 0 | 1;
  readonly path: PathState;
  readonly stay: Stay;
  /** Settled readings of earlier stays since the last aim by eye, oldest first; only the newest are kept. */
  readonly samples: readonly Sample[];
  /** The adjuster being worked on: the last one turned or chosen. */
  readonly axis: Axis;
  /** How far each screw can go, as far as found, eighths from the start. */
  readonly limits: PerAxis<{ readonly low: Eighths; readonly high: Eighths }>;
  /** Screws that could not be turned, until one is turned or its cause was looked into. */
  readonly stuck: PerAxis<boolean>;
  /** How many times the emitter was aimed by eye. */
  readonly aims: number;
  /** An earlier visit left it aligned. */
  readonly wasAligned: boolean;
  /** The crew cannot aim by eye; the search begins without it. */
  readonly unaimed: boolean;
  /** How many cause lists were worked through since the last settled signal. */
  readonly checks: number;
  readonly blocking: Blocking;
  /** What ended the last stay: a wrong turn can explain a reading only if there was a turn. */
  readonly touched: 'nothing' | 'move' | 'gain' | 'other';
  /** Entries that were questioned and confirmed. */
  readonly confirmed: readonly Seq[];
  /** Readings before this entry cannot be compared with later ones: something changed unnoticed. */
  readonly restartedAt: Seq;
  readonly restarts: number;
  /** The newest confirmed reading that nothing explains, unless it led to a restart. */
  readonly odd: Seq | undefined;
  /** Readings that nothing explains though they, and the turns before them, were confirmed; since the last aim by eye. */
  readonly oddities: number;
  /** Turns made when a list of causes was last worked through, and aims by eye since because the card left light. */
  readonly looked: { readonly moves: number; readonly behindCard: number };
  /** Since when the search goes without a model of the beam. */
  readonly floor: { readonly since: Seq } | undefined;
  readonly accepted: Acceptance | undefined;
  /** The looks since the last aim by eye, oldest first, where no number is read at all; undefined where numbers are. */
  readonly looks: readonly Look[] | undefined;
  /** How often the light was said to keep changing since it was last seen to do one thing. */
  readonly wavered: number;
  /** One person does both and walks to the meter: how things stood when they last left it. Undefined for a crew of two. */
  readonly walk: { readonly left: Search | undefined } | undefined;
}

export const NONE_STUCK: Search['stuck'] = { horizontal: false, vertical: false };

/** How a search begins: by numbers, on a pair that nobody has aligned yet, unless it says otherwise. */
export interface Beginning {
  /** No number is read, only what the light does against the look before. */
  readonly byTrends?: boolean;
  /** An earlier visit left the pair aligned. */
  readonly wasAligned?: boolean;
  /** One person walks between the emitter and the meter. */
  readonly walks?: boolean;
}

export function startSearch(
  meter: MeterProfile,
  adjusters: AdjusterProfile,
  { byTrends = false, wasAligned = false, walks = false }: Beginning = {},
): Search {
  const limit = { low: -adjusters.travel, high: adjusters.travel };
  return {
    meter,
    adjusters,
    history: undefined,
    turned: { horizontal: 0, vertical: 0 },
    pointing: { horizontal: START_POINTING, vertical: START_POINTING },
    lastTurn: { horizontal: 0, vertical: 0 },
    moves: 0,
    turns: { horizontal: 0, vertical: 0 },
    lastMove: undefined,
    made: [],
    gain: 0,
    gainFull: false,
    gainWay: 0,
    gainStuck: 0,
    path: 'clear',
    stay: newStay(0),
    samples: [],
    axis: 'horizontal',
    limits: { horizontal: limit, vertical: limit },
    stuck: NONE_STUCK,
    aims: 0,
    wasAligned,
    unaimed: false,
    checks: 0,
    blocking: { seqs: [] },
    touched: 'nothing',
    confirmed: [],
    restartedAt: 0,
    restarts: 0,
    odd: undefined,
    oddities: 0,
    looked: { moves: 0, behindCard: 0 },
    floor: undefined,
    accepted: undefined,
    looks: byTrends ? [] : undefined,
    wavered: 0,
    walk: walks ? { left: undefined } : undefined,
  };
}

/** How this search began. */
export const begunAs = ({ looks, wasAligned, walk }: Search): Beginning => ({
  byTrends: looks !== undefined,
  wasAligned,
  walks: walk !== undefined,
});

// It must be the same object every time, so that what was learnt with it stays valid after the stay.
const heres = new WeakMap<Search, { readonly sample: Sample | undefined }>();

/** The stay's settled reading as a sample, if it has one and the beam was free. */
export function sampleHere(search: Search): Sample | undefined {
  const known = heres.get(search);
  if (known) return known.sample;
  const { turned, pointing, turns, lastMove: move, gain } = search;
  const here = search.path === 'clear' ? settled(search.stay, search.meter) : undefined;
  const sample = here && { ...here, turned, pointing, turns, move, gain };
  heres.set(search, { sample });
  return sample;
}
