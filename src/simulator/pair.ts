import type { MeterProfile } from '../model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../model/reading.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { type Lobe, lobePower } from './beam.ts';
import { normal, type Rng } from './rng.ts';

/** The fixed part of a beam pair: its build, and how far off it starts. */
export interface PairSpec {
  meter: MeterProfile;
  /** The first is the main lobe; others are side lobes and reflections. */
  lobes: readonly [Lobe, ...Lobe[]];
  /** Level of the main lobe's peak at full gain, dB above the meter's full scale; negative: below. */
  peakDb: number;
  /** How far the gain can be turned down from full, dB. */
  gainRangeDb: number;
  /** Distance of the gain's steps, dB; 0 turns freely. */
  gainStepDb: number;
  /** Lost motion of each screw on reversal, eighths. */
  backlash: Record<Axis, number>;
  /** Part of a turn of one adjuster that also moves the other axis. */
  coupling: number;
  /** How far from the receiver an aim by eye may end, eighths: the angle of 15 cm at this distance. */
  aimRadius: number;
  /** How far each adjuster goes from the start in each direction, eighths. */
  travel: number;
  /** Time constant with which the meter follows, ms. */
  lagMs: number;
  /** Noise of one reading: a share of it in dB, and the receiver's own in meter units. */
  noiseDb: number;
  noiseUnits: number;
  /** Steady change of the power, dB a minute. */
  driftDbPerMinute: number;
  /** Swing of the pointing by a shaking mount, eighths, and its period, ms. */
  vibration: { eighths: number; periodMs: number };
  /** Loss by passing fog, from none to this many dB and back, and its period. */
  fog?: { db: number; periodMs: number };
  /** Standard deviation of what a hand really turns, eighths. */
  handSd?: number;
  /** The pointing of the most power, where it is not the middle of the main lobe. */
  best?: Record<Axis, number>;
}

/** A beam pair at one moment. Plain data; every step gives a new one. */
export interface BeamPair {
  readonly spec: PairSpec;
  /** Positions of the screws. */
  readonly turned: Record<Axis, Eighths>;
  /** Where the emitter points: the screws minus their backlash, from the last aim by eye. */
  readonly pointing: Record<Axis, number>;
  readonly aim: Record<Axis, number>;
  /** How far the screws really are from where the hand believes them, eighths. */
  readonly strayed: Record<Axis, number>;
  /** Gain below full, dB. */
  readonly gainDb: number;
  readonly blocked: boolean;
  /** The power that the meter showed at the last change, and when: it follows with a lag. */
  readonly shown: { power: number; at: number };
}

export function createBeamPair(spec: PairSpec, gainDb = 0): BeamPair {
  const none = { horizontal: 0, vertical: 0 };
  const pair = {
    spec,
    turned: none,
    pointing: none,
    aim: none,
    strayed: none,
    gainDb,
    blocked: false,
    shown: { power: 0, at: 0 },
  };
  return { ...pair, shown: { power: powerNow(pair, 0), at: 0 } };
}

/** Power relative to full scale, without noise. */
function powerNow(pair: BeamPair, at: number): number {
  const { spec } = pair;
  const swing =
    spec.vibration.eighths === 0
      ? 0
      : spec.vibration.eighths * Math.sin((2 * Math.PI * at) / spec.vibration.periodMs);
  const h = pair.pointing.horizontal + spec.coupling * pair.pointing.vertical + swing;
  const v = pair.pointing.vertical - spec.coupling * pair.pointing.horizontal;
  const power = spec.lobes
    .filter((lobe) => !pair.blocked || (lobe.reflected && !lobe.hiddenWithDirect))
    .reduce((sum, lobe) => sum + lobePower(lobe, h, v), 0);
  const fog = spec.fog ? (spec.fog.db / 2) * (1 - Math.cos((2 * Math.PI * at) / spec.fog.periodMs)) : 0;
  return power * 10 ** ((spec.peakDb - pair.gainDb - fog + (spec.driftDbPerMinute * at) / 60_000) / 10);
}

function shownPower(pair: BeamPair, at: number): number {
  const left = Math.exp(-Math.max(0, at - pair.shown.at) / pair.spec.lagMs);
  return powerNow(pair, at) * (1 - left) + pair.shown.power * left;
}

/** Keeps what the meter shows while something else changes. */
const change = (pair: BeamPair, at: number, to: Partial<BeamPair>): BeamPair => ({
  ...pair,
  ...to,
  shown: { power: shownPower(pair, at), at },
});

/**
 * Turns one screw; the emitter follows once the backlash is taken up. Stops at the end of travel. `slip`: how
 * much further than meant the hand really turned, eighths.
 */
export function turn(pair: BeamPair, axis: Axis, eighths: Eighths, at: number, slip = 0): BeamPair {
  const { travel, backlash } = pair.spec;
  const screw = Math.max(-travel, Math.min(travel, pair.turned[axis] + eighths));
  const half = backlash[axis] / 2;
  const strayed = pair.strayed[axis] + slip;
  const dragged = pair.aim[axis] + screw + strayed;
  const points = Math.max(dragged - half, Math.min(dragged + half, pair.pointing[axis]));
  return change(pair, at, {
    turned: { ...pair.turned, [axis]: screw },
    pointing: { ...pair.pointing, [axis]: points },
    strayed: { ...pair.strayed, [axis]: strayed },
  });
}

/** Sets the gain, dB below full; takes the nearest step where it has steps. */
export function setGain(pair: BeamPair, gainDb: number, at: number): BeamPair {
  const { gainStepDb, gainRangeDb } = pair.spec;
  const stepped = gainStepDb > 0 ? Math.round(gainDb / gainStepDb) * gainStepDb : gainDb;
  return change(pair, at, { gainDb: Math.max(0, Math.min(gainRangeDb, stepped)) });
}

/** How far a detector that sets its own gain turns it at once, dB. */
const OWN_STEP_DB = 6;

/** What a detector that sets its own gain does with a saturated or lost reading; the same pair if it does nothing. */
export function ownGain(pair: BeamPair, shown: Reading, at: number): BeamPair {
  if (pair.spec.meter.gain !== 'automatic' || pair.blocked || shown.kind === 'value') return pair;
  const gainDb = pair.gainDb + (shown.kind === 'saturated' ? OWN_STEP_DB : -OWN_STEP_DB);
  return gainDb < 0 || gainDb > pair.spec.gainRangeDb ? pair : setGain(pair, gainDb, at);
}

/** Aims the emitter by eye at `pointing`; the present positions of the screws become the new zero. */
export function reAim(pair: BeamPair, pointing: Record<Axis, number>, at: number): BeamPair {
  const none = { horizontal: 0, vertical: 0 };
  return change(pair, at, { turned: none, strayed: none, pointing, aim: pointing });
}

/** Puts a board into the direct path, or takes it out. */
export const block = (pair: BeamPair, blocked: boolean, at: number): BeamPair =>
  change(pair, at, { blocked });

/** A meter of unknown law follows some root of the power. */
const UNKNOWN_LAW = 0.6;

/** The meter's number for a power relative to full scale, before noise and rounding. */
export function meterValue(meter: MeterProfile, power: number): number {
  if (meter.law === 'logarithmic') {
    return meter.max + (10 * Math.log10(Math.max(power, 1e-12))) / (meter.dbPerUnit ?? 1);
  }
  const share = meter.law === 'unknown' ? power ** UNKNOWN_LAW : power;
  return meter.min + (meter.max - meter.min) * share;
}

/** The power relative to full scale at which the meter shows `value`. */
function powerAt(meter: MeterProfile, value: number): number {
  if (meter.law === 'logarithmic') return 10 ** (((value - meter.max) * (meter.dbPerUnit ?? 1)) / 10);
  const share = (value - meter.min) / (meter.max - meter.min);
  return meter.law === 'unknown' ? share ** (1 / UNKNOWN_LAW) : share;
}

/** The light that reaches the meter, dB of its full scale, without noise: what a lamp shows. */
export const lightDb = (pair: BeamPair, at: number): number =>
  10 * Math.log10(Math.max(shownPower(pair, at), 1e-12));

/** What a person reads off the meter at `at`. */
export function readMeter(pair: BeamPair, at: number, rng: Rng): Reading {
  const { meter, noiseDb, noiseUnits } = pair.spec;
  const power = shownPower(pair, at) * 10 ** ((noiseDb * normal(rng)) / 10);
  const value = meterValue(meter, power) + noiseUnits * normal(rng);
  const steps = Math.round((value - meter.min) / meter.resolution);
  const rounded = Number((meter.min + steps * meter.resolution).toFixed(6));
  if (rounded >= meter.saturatedAt) return SATURATED;
  if (rounded <= meter.lostAt) return NO_SIGNAL;
  return valueReading(rounded);
}

/** Decibels from the present pointing up to the best possible. */
export function shortfallDb(pair: BeamPair): number {
  const clear = { ...pair, blocked: false };
  const best = { ...clear, pointing: pair.spec.best ?? truePeak(pair.spec) };
  return 10 * Math.log10(powerNow(best, 0) / powerNow(clear, 0));
}

/** Where the emitter must point for the main lobe's peak, without the coupling. */
export function truePeak({ lobes: [main], coupling }: PairSpec): Record<Axis, number> {
  const scale = 1 / (1 + coupling * coupling);
  return {
    horizontal: (main.horizontal - coupling * main.vertical) * scale,
    vertical: (main.vertical + coupling * main.horizontal) * scale,
  };
}

/** How much further than meant a hand turns, eighths. */
export const handSlip = ({ handSd }: PairSpec, rng: Rng): number => (handSd ? handSd * normal(rng) : 0);

/** The gain, dB below full, at which the present pointing would show `value`. */
export function gainFor(pair: BeamPair, value: number, at: number): number {
  const settled = powerNow({ ...pair, gainDb: 0 }, at);
  const wanted = powerAt(pair.spec.meter, value);
  return 10 * Math.log10(settled / wanted);
}

/** True if the emitter points at a reflection, not at the receiver. */
export function onReflection(pair: BeamPair): boolean {
  const at = (lobe: Lobe) => lobePower(lobe, pair.pointing.horizontal, pair.pointing.vertical);
  const direct = pair.spec.lobes.filter((l) => !l.reflected).reduce((sum, l) => sum + at(l), 0);
  const reflected = pair.spec.lobes.filter((l) => l.reflected).reduce((sum, l) => sum + at(l), 0);
  return reflected > direct;
}
