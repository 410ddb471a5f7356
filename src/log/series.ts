import type { Entry } from '../model/entry.ts';
import type { Fact, FactOf } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { Reading } from '../model/reading.ts';
import type { PanelIndication } from '../model/reports.ts';
import { AXES, type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { amendments, replaced } from './amendments.ts';

/** The positions of both adjusters, from the start or from the last aim by eye. */
export type Position = Record<Axis, Eighths>;

/** A reading, with the place and gain it was taken at. */
export interface Sample {
  seq: Seq;
  /** Server clock, ms. */
  at: number;
  reading: Reading;
  position: Position;
  /** The last turn of each adjuster before it: +1 clockwise, -1 anticlockwise, 0 not turned yet. */
  cameBy: Position;
  /** Index into `Series.gains`. */
  gain: number;
  /** How often the emitter had been aimed by eye before: positions can be compared only within one aim. */
  aim: number;
  /** The beam was covered, all or in part: the reading says nothing about the adjusters. */
  covered: boolean;
  /** The entry that took it back or corrected it, if one did. */
  retractedBy?: Seq;
}

/** How a gain setting was reached; the first is as found. The log does not know how far apart two settings are. */
export type GainSetting = { change: 'as-found' } | { change: FactOf<'gain'>['change']; to?: number };

/** Readings taken while one adjuster was turned and the other was not. */
export interface Sweep {
  axis: Axis;
  aim: number;
  /** Position of the other adjuster. */
  otherAt: Eighths;
  samples: Sample[];
}

/** Something that happened at a time. */
export interface Mark {
  seq: Seq;
  at: number;
  what:
    | 'gain'
    | 'hold'
    | 'blocked'
    | 'partial'
    | 'clear'
    | 're-aimed'
    | 'disturbed'
    | 'pause'
    | 'resume'
    | 'accept'
    | 'panel'
    | 'signed'
    | 'stopped'
    | 'restarted';
  /** End of a hold, ms. */
  until?: number;
  /** For an acceptance: it was made although evidence was missing. */
  override?: boolean;
  /** Index into `Series.gains`, of the setting a gain change led to. */
  gain?: number;
  /** What the fire panel showed. */
  shows?: PanelIndication;
}

export interface Series {
  samples: Sample[];
  sweeps: Sweep[];
  gains: GainSetting[];
  marks: Mark[];
  /** Positions of the adjusters at the end. */
  position: Position;
  aim: number;
}

/**
 * The data behind the charts. A turn or gain change that was taken back moves nothing; a reading that was
 * taken back or corrected stays, flagged, at its position, and its correction is at the same position.
 */
export function series(entries: readonly Entry[]): Series {
  const { takenBackBy, standIns } = amendments(entries);
  const all: Series = {
    samples: [],
    sweeps: [],
    gains: [{ change: 'as-found' }],
    marks: [],
    position: { horizontal: 0, vertical: 0 },
    aim: 0,
  };
  let cameBy: Position = { horizontal: 0, vertical: 0 };
  let sweep: Sweep | undefined;
  let covered = false;

  const read = (seq: Seq, at: number, reading: Reading, retractedBy?: Seq) => {
    const sample: Sample = {
      seq,
      at,
      reading,
      position: all.position,
      cameBy,
      gain: all.gains.length - 1,
      aim: all.aim,
      covered,
      ...(retractedBy !== undefined && { retractedBy }),
    };
    all.samples.push(sample);
    if (!covered) sweep?.samples.push(sample);
  };

  const count = (seq: Seq, at: number, fact: Fact) => {
    const mark = (what: Mark['what'], more: Partial<Mark> = {}) => all.marks.push({ seq, at, what, ...more });
    switch (fact.type) {
      case 'reading':
        read(seq, at, fact.reading);
        break;
      case 'move':
        if (sweep?.axis !== fact.axis) {
          sweep = startSweep(all, fact.axis);
          all.sweeps.push(sweep);
        }
        all.position = { ...all.position, [fact.axis]: all.position[fact.axis] + fact.eighths };
        cameBy = { ...cameBy, [fact.axis]: Math.sign(fact.eighths) };
        break;
      case 'gain':
        all.gains.push({ change: fact.change, ...(fact.to !== undefined && { to: fact.to }) });
        mark('gain', { gain: all.gains.length - 1 });
        break;
      case 're-aimed':
      case 'disturbed':
        all.position = { horizontal: 0, vertical: 0 };
        cameBy = { horizontal: 0, vertical: 0 };
        all.aim += 1;
        sweep = undefined;
        mark(fact.type);
        break;
      case 'path':
        covered = fact.state !== 'clear';
        mark(fact.state);
        break;
      case 'instruction':
        if (fact.advice.action.kind === 'hold') mark('hold', { until: fact.advice.action.until });
        break;
      case 'accept':
        mark('accept', { override: fact.override !== undefined });
        break;
      case 'panel':
        mark('panel', { shows: fact.shows });
        break;
      case 'pause':
      case 'resume':
      case 'signed':
      case 'stopped':
      case 'restarted':
        mark(fact.type);
    }
  };

  for (const { seq, at, fact } of entries) {
    // A correction counts at the place of what it corrects.
    if (replaced(fact) !== undefined) continue;
    const retractedBy = takenBackBy.get(seq);
    const standIn = standIns.get(seq);
    if (retractedBy === undefined) count(seq, at, fact);
    else if (fact.type === 'reading') read(seq, at, fact.reading, retractedBy);
    if (standIn) count(standIn.seq, at, standIn.fact);
  }
  return all;
}

/** A sweep starts with the last reading before its first turn, if it was taken at that position. */
function startSweep({ samples, position, aim }: Series, axis: Axis): Sweep {
  const before = samples.findLast((sample) => sample.retractedBy === undefined && !sample.covered);
  const stoodHere = before?.aim === aim && AXES.every((each) => before.position[each] === position[each]);
  return { axis, aim, otherAt: position[otherAxis(axis)], samples: stoodHere ? [before] : [] };
}

/** The highest number seen in one sweep at one gain setting. */
export interface Top {
  sample: Sample;
  value: number;
  /** How many other positions with a number were read on each side of it, in that sweep at that gain. */
  below: number;
  above: number;
}

/** With fewer positions a highest one means nothing: it needs one on each side. */
const ENOUGH = 3;

/**
 * The highest reading of one adjuster, in its latest sweep and gain setting with numbers at three positions
 * or more; otherwise the one with the most positions. Of equal readings, the last. This is what was seen; the
 * engine fits where the beam's peak is.
 */
export function topOf({ sweeps, aim }: Series, axis: Axis): Top | undefined {
  let best: Top | undefined;
  let bestCount = 0;
  for (const sweep of sweeps) {
    if (sweep.axis !== axis || sweep.aim !== aim) continue;
    for (const gain of new Set(sweep.samples.map((sample) => sample.gain))) {
      const top = topAt(sweep, gain);
      if (!top) continue;
      const count = top.below + 1 + top.above;
      if (count < Math.min(bestCount, ENOUGH)) continue;
      best = top;
      bestCount = count;
    }
  }
  return best;
}

function topAt(sweep: Sweep, gain: number): Top | undefined {
  let top: { sample: Sample; value: number } | undefined;
  const positions = new Set<Eighths>();
  for (const sample of sweep.samples) {
    if (sample.gain !== gain || sample.retractedBy !== undefined || sample.reading.kind !== 'value') continue;
    positions.add(sample.position[sweep.axis]);
    if (!top || sample.reading.value >= top.value) top = { sample, value: sample.reading.value };
  }
  if (!top) return undefined;
  const here = top.sample.position[sweep.axis];
  const others = [...positions];
  return {
    ...top,
    below: others.filter((position) => position < here).length,
    above: others.filter((position) => position > here).length,
  };
}
