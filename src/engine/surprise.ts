import type { Question } from '../model/advice.ts';
import type { Seq } from '../model/ids.ts';
import type { MeterProfile } from '../model/profile.ts';
import { type Beam, dropAt, fitShape, predict } from './beam.ts';
import { RETURN } from './came-back.ts';
import type { Estimate } from './fit.ts';
import { toDb } from './level.ts';
import { newestAt } from './place.ts';
import type { Sample, Turn } from './sample.ts';
import type { Search } from './search.ts';
import type { Shape } from './shape.ts';
import { difference, shifted, slipsOf } from './slip.ts';

/** A reading that is off the prediction by more than these standard deviations, and this many dB, cannot be right. */
const SURPRISE = { sds: 4.5, atLeastDb: 0.35 };
/** Another shape counts if it explains the earlier readings nearly as well: within this much of chi squared. */
const AS_GOOD = 25;
/** A turned beam of few readings would explain any. */
const ALIBIS: readonly Shape[] = [1, 2];
/** A prediction less certain than this says nothing. dB. */
const VAGUE_DB = 4;
/** What was meant instead is this near to the prediction: standard deviations, plus dB. */
const LIKELY = { sds: 3, db: 0.3 };

/** How far off a parabola a beam may be, dB: a little where it was read, much below that. */
const shapeDoubt = (dropDb: number, readDownTo: number): number =>
  0.04 + 0.08 * Math.min(dropDb, readDownTo) + 0.5 * Math.max(0, dropDb - readDownTo);

/** The beam as known before the reading here, and what it predicts for it. */
export interface Surprise {
  readonly past: Beam;
  readonly expected: Estimate;
}

/** Decibels of a reading: exact, at least or at most. */
const dbOf = ({ level }: Sample): number => level.db;

export function predicted(past: Beam, place: Sample): Estimate | undefined {
  const estimate = predict(past, place);
  if (!estimate || estimate.sd > VAGUE_DB) return undefined;
  const drop = dropAt(past, place);
  return { ...estimate, sd: Math.hypot(estimate.sd, shapeDoubt(drop, past.readDownTo)) };
}

/** The earlier readings predict a reading within this. dB. */
const FORETOLD_DB = 0.7;

/** An error in this reading would show: the earlier ones predict it. */
export function isForetold(past: Beam | undefined, here: Sample, { meter }: Search): boolean {
  const expected = past && meter.law !== 'unknown' ? predicted(past, here) : undefined;
  if (!expected) return false;
  // Far down, "no signal" is predicted even if the figure is vague.
  if (here.level.kind === 'below') return expected.value + 2 * expected.sd < here.level.db;
  return expected.sd < FORETOLD_DB;
}

/** By how many decibels a reading misses a prediction; a censored one misses only on the wrong side. */
function miss(sample: Sample, value: number): number {
  const off = dbOf(sample) - value;
  if (sample.level.kind === 'below') return Math.min(0, off);
  return sample.level.kind === 'above' ? Math.max(0, off) : off;
}

/** A reading contradicts the earlier ones, whatever the shape of the beam. */
export function surprise(
  beam: Beam,
  before: readonly Sample[],
  here: Sample,
  search: Search,
): Surprise | undefined {
  const levels = before.filter((s) => !beam.otherLight.includes(s));
  if (levels.length < 2 || search.meter.law === 'unknown') return undefined;
  const noise = here.level.kind === 'level' ? here.level.sd : 0.3;
  // A beam with an earlier surprise is trusted less.
  const sds = SURPRISE.sds * (1 + search.restarts / 2);
  const contradicted = (past: Beam | undefined): Surprise | undefined => {
    const expected = past && predicted(past, here);
    if (!past || !expected) return undefined;
    const margin = Math.max(SURPRISE.atLeastDb, sds * Math.hypot(expected.sd, noise));
    return Math.abs(miss(here, expected.value)) > margin ? { past, expected } : undefined;
  };
  const first = contradicted(beam);
  if (!first) return notAsBefore(beam, before, here);
  const isAlibi = ALIBIS.some((shape) => {
    if (shape === beam.shape) return false;
    const other = fitShape(levels, search.meter, beam.backlash, shape);
    return other && other.chi2 < beam.chi2 + AS_GOOD && !contradicted(other);
  });
  return isAlibi ? undefined : first;
}

/** Back at a place next to the peak, its reading should come back: within so many standard deviations. */
const RETURN_SDS = 3;

function notAsBefore(past: Beam, before: readonly Sample[], here: Sample): Surprise | undefined {
  const seen = newestAt(before, here);
  if (seen?.level.kind !== 'level' || here.level.kind !== 'level' || dropAt(past, here) > RETURN.within)
    return undefined;
  const sd = Math.hypot(seen.level.sd, here.level.sd);
  const isOff = seen.level.db - here.level.db > Math.max(RETURN.missesBy, RETURN_SDS * sd);
  return isOff ? { past, expected: { value: seen.level.db, sd: seen.level.sd } } : undefined;
}

const isLikely = (off: number, { sd }: Estimate): boolean => Math.abs(off) < LIKELY.sds * sd + LIKELY.db;

/** The one question that settles a surprise; undefined once it was answered. */
export function openQuestion(
  search: Search,
  here: Sample,
  { past, expected }: Surprise,
): Question | undefined {
  const about = here.seqs[here.seqs.length - 1];
  if (about === undefined) return undefined;
  const isSure = (seq: Seq) => search.confirmed.includes(seq);
  if (!here.seqs.some(isSure)) {
    const { reading } = here;
    const meant = reading.kind === 'value' ? soundAlike(reading.value, search.meter) : [];
    const likely = meant.filter((value) => isLikely(toDb(value, search.meter) - expected.value, expected));
    if (reading.kind !== 'value' || likely.length === 0) return { kind: 'is-it-so', about, what: 'reading' };
    return { kind: 'which-value', about, options: [reading.value, ...likely] };
  }
  const move = search.lastMove;
  if (search.touched !== 'move' || !move || isSure(move.seq)) return undefined;
  const options = otherTurns(here, past, move.turn);
  return options.length > 0 ? { kind: 'which-move', about: move.seq, options } : undefined;
}

/** The usual mistakes that would explain the reading, likeliest first. */
function otherTurns(here: Sample, past: Beam, made: Turn): Turn[] {
  return slipsOf(made)
    .flatMap((turn) => {
      const place = shifted(here, difference(made, turn));
      const estimate = predicted(past, place);
      const off = estimate && Math.abs(miss(here, estimate.value));
      return estimate && off !== undefined && isLikely(off, estimate) ? [{ turn, off }] : [];
    })
    .sort((a, b) => a.off - b.off)
    .slice(0, 2)
    .map(({ turn }) => turn);
}

/**
 * Numbers that are mistaken for this one when spoken or read: thirteen and thirty to nineteen and ninety,
 * digits swapped, one digit heard as its neighbour, a zero dropped or added.
 */
function soundAlike(value: number, meter: MeterProfile): number[] {
  const sign = Math.sign(value);
  const size = Math.abs(value);
  const whole = Math.trunc(size);
  const rest = size - whole;
  const last = whole % 100;
  const hundreds = whole - last;
  const found = [
    last >= 13 && last <= 19 ? hundreds + (last - 10) * 10 : Number.NaN,
    last >= 30 && last <= 90 && last % 10 === 0 ? hundreds + last / 10 + 10 : Number.NaN,
    Number([...String(whole)].reverse().join('')),
    whole + 10,
    whole - 10,
    whole / 10,
    whole * 10,
  ];
  const values = found.map((v) => Number((sign * (v + rest)).toFixed(6)));
  const isShown = (v: number) => v !== value && v > meter.lostAt && v < meter.saturatedAt;
  return [...new Set(values.filter((v) => Number.isFinite(v) && isShown(v)))];
}
