import { fromDb, isLost, isSaturated, toDb } from '../../src/engine/level.ts';
import { midBand, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import type { Axis } from '../../src/model/turns.ts';
import { MOVE_MS } from '../../src/simulator/crew.ts';
import {
  type BeamPair,
  createBeamPair,
  gainFor,
  handSlip,
  type PairSpec,
  reAim,
  readMeter,
  setGain,
  truePeak,
  turn,
} from '../../src/simulator/pair.ts';
import { between, type Rng } from '../../src/simulator/rng.ts';
import { judged, type Outcome } from './engine-run.ts';

const READ_MS = 4_000;

/** More turns than anyone would make: the method has failed. */
const MOST_TURNS = 400;
export class GaveUp extends Error {}

/**
 * A careful person without the engine, who turns, sets the gain and reads. Hand movements are counted as for the
 * engine. Readings are in decibels: minus infinity for no signal, plus infinity for a flooded meter.
 */
export class Hands {
  pair: BeamPair;
  at = 0;
  turns = 0;
  gainChanges = 0;
  readings = 0;
  reAims = 0;

  constructor(
    readonly spec: PairSpec,
    readonly rng: Rng,
  ) {
    this.pair = createBeamPair(spec);
  }

  /** A turn that is too large for one movement of the hand counts as several. */
  turn(axis: Axis, eighths: number): void {
    for (let left = eighths; left !== 0; ) {
      const step = Math.sign(left) * Math.min(Math.abs(left), NEUTRAL_ADJUSTERS.maxStep);
      this.at += MOVE_MS;
      this.pair = turn(this.pair, axis, step, this.at, handSlip(this.spec, this.rng));
      this.turns += 1;
      left -= step;
      if (this.turns > MOST_TURNS) throw new GaveUp();
    }
  }

  read(): number {
    const { meter } = this.spec;
    this.at += READ_MS;
    this.readings += 1;
    const reading = readMeter(this.pair, this.at, this.rng);
    if (isLost(reading, meter)) return Number.NEGATIVE_INFINITY;
    if (isSaturated(reading, meter) || reading.kind !== 'value') return Number.POSITIVE_INFINITY;
    return toDb(reading.value, meter);
  }

  /** Reads; a flooded meter first has its gain lowered to the middle of the band. */
  readUnflooded(): number {
    let db = this.read();
    for (let tries = 0; db === Number.POSITIVE_INFINITY && tries < 5; tries++) {
      this.gainToMidBand();
      db = this.read();
    }
    return db;
  }

  gainToMidBand(): void {
    this.at += MOVE_MS;
    this.gainChanges += 1;
    this.pair = setGain(this.pair, gainFor(this.pair, midBand(this.spec.meter), this.at), this.at);
  }

  reAim(): void {
    const { spec, rng } = this;
    if (this.reAims++ > 3) throw new GaveUp();
    const angle = between(rng, 0, 2 * Math.PI);
    const off = spec.aimRadius * Math.sqrt(rng());
    const peak = truePeak(spec);
    const pointing = {
      horizontal: peak.horizontal + off * Math.cos(angle),
      vertical: peak.vertical + off * Math.sin(angle),
    };
    this.at += 10 * MOVE_MS;
    this.pair = reAim(this.pair, pointing, this.at);
  }

  /** So many decibels must two readings near `db` differ to count as different. */
  tolerance(db: number): number {
    const { meter } = this.spec;
    if (!Number.isFinite(db)) return 0.1;
    return Math.abs(toDb(fromDb(db, meter) + meter.tolerance, meter) - db);
  }

  outcome(accepted: boolean): Outcome {
    const { turns, gainChanges, readings, reAims } = this;
    const rest = {
      turns,
      gainChanges,
      readings,
      reAims,
      seconds: this.at / 1000,
      questions: 0,
      named: false,
    };
    return { accepted, ...rest, ...judged(this.pair) };
  }
}
