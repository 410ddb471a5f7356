import { AXES } from '../model/turns.ts';
import { type Beam, beamOf, predict } from './beam.ts';
import { inGain } from './bridged.ts';
import { type Estimate, type Solved, solveShape } from './fit.ts';
import { fitBeam } from './one-beam.ts';
import { newestAt } from './place.ts';
import { isRejected, isUnproven } from './rejected.ts';
import type { PerAxis, Sample } from './sample.ts';
import { type Search, sampleHere } from './search.ts';
import { BACKLASHES, profileBacklash } from './slack.ts';
import { bestSlip, type Slip } from './slip.ts';
import { isForetold, openQuestion, predicted, type Surprise, surprise } from './surprise.ts';

/**
 * What a search shows at once: the reading here, all that count, and their beam. The beam is fitted when it
 * is first needed.
 */
export interface View {
  readonly search: Search;
  readonly here: Sample | undefined;
  readonly samples: readonly Sample[];
  readonly beam: Beam | undefined;
  /** What the reading here contradicts, if anything. */
  readonly surprise: Surprise | undefined;
  /** One beam explains every reading. */
  readonly isOneBeam: boolean;
  /** A turn that was perhaps made otherwise than it was reported: that would explain every reading. */
  readonly slip: Slip | undefined;
  /** The earlier readings predict this one, so that an error would show. */
  readonly isForetold: boolean;
  /** What the readings before the newest turn predict for this one. */
  readonly expected: Estimate | undefined;
}

// A search never changes, so its view stays valid; one decision uses it several times.
const seen = new WeakMap<Search, View>();

export function look(search: Search): View {
  const known = seen.get(search);
  if (known) return known;
  const here = sampleHere(search);
  let found: Explained | undefined;
  const explained = () => {
    found ??= explain(search, here);
    return found;
  };
  const view: View = {
    search,
    here,
    get samples() {
      return explained().samples;
    },
    get beam() {
      return explained().beam;
    },
    get surprise() {
      return explained().surprise;
    },
    get isOneBeam() {
      return explained().isOneBeam;
    },
    get slip() {
      return explained().slip;
    },
    get isForetold() {
      return here !== undefined && isForetold(explainPast(search, here).beam, here, search);
    },
    get expected() {
      if (!here) return undefined;
      // Across a change of the gain the reading before it was made equal to this one, and foretells nothing.
      const since = search.lastMove?.seq ?? -1;
      const { beam } = learnt(
        earlier(search, here).filter((s) => (s.seqs[0] ?? 0) < since),
        search,
      );
      return beam && predicted(beam, here);
    },
  };
  seen.set(search, view);
  return view;
}

type Explained = Pick<View, 'samples' | 'beam' | 'surprise' | 'isOneBeam' | 'slip'>;

/** A reading that cannot be right waits for its question: until then the beam is the one before it. */
function explain(search: Search, here: Sample | undefined): Explained {
  const past = explainPast(search, here);
  if (!here) return past;
  const since = earlier(search, here);
  const isNew = !cameBack(since, here);
  const found = isNew && past.beam ? surprise(past.beam, past.samples, here, search) : undefined;
  if (found && openQuestion(search, here, found)) {
    return { ...past, samples: [...past.samples, here], surprise: found, slip: undefined };
  }
  return { ...learnt([...since, here], search), surprise: found };
}

/** A number read again at the same place is neither a wrong reading nor a wrong turn, whatever the beam says. */
function cameBack(since: readonly Sample[], here: Sample): boolean {
  const seen = newestAt(since, here);
  if (seen?.level.kind !== 'level' || here.level.kind !== 'level') return false;
  return Math.abs(seen.level.db - here.level.db) < 3 * Math.hypot(seen.level.sd, here.level.sd);
}

const counts = (s: Sample, { restartedAt }: Search): boolean =>
  (s.seqs[s.seqs.length - 1] ?? 0) >= restartedAt;

function explainPast(search: Search, here: Sample | undefined): Explained {
  return { ...learnt(earlier(search, here), search), surprise: undefined };
}

/** The readings before the one here. Of a person who walks, all as they would be at this gain. */
function earlier(search: Search, here: Sample | undefined): readonly Sample[] {
  const since = search.samples.filter((s) => counts(s, search));
  if (!search.walk) return since;
  return inGain(here ? [...since, here] : since, search.gain).filter((s) => s !== here);
}

type Learnt = Omit<Explained, 'surprise'>;

// Kept by the newest sample: this stay and the next ask several times about the same samples.
const lessons = new WeakMap<Sample, Lesson>();

interface Lesson {
  readonly from: readonly Sample[];
  readonly confirmed: Search['confirmed'];
  readonly learnt: Learnt;
}

function learnt(samples: readonly Sample[], search: Search): Learnt {
  const newest = samples[samples.length - 1];
  const known = newest && lessons.get(newest);
  const isKnown = known?.confirmed === search.confirmed && known.from.length === samples.length;
  if (isKnown && known.from.every((s, i) => s === samples[i])) return known.learnt;
  const explained = consistent(samples, search);
  const beam = explained.beam && learnBacklash(explained.beam, explained.samples, search);
  const found = { ...explained, beam };
  if (newest) lessons.set(newest, { from: samples, confirmed: search.confirmed, learnt: found });
  return found;
}

/** How many readings a backlash can be learnt from, and how far it may differ from the profile's, eighths. */
const BACKLASH = { levels: 6, sd: 1 };

/** Tries larger backlashes than the profile's while they explain the readings better. */
function learnBacklash(beam: Beam, samples: readonly Sample[], { meter, adjusters }: Search): Beam {
  if (samples.filter((s) => s.level.kind === 'level').length < BACKLASH.levels) return beam;
  const misfit = ({ backlash, chi2 }: Pick<Solved, 'backlash' | 'chi2'>) =>
    AXES.reduce(
      (sum, axis) => sum + (((BACKLASHES[backlash[axis]] ?? 0) - adjusters.backlash) / BACKLASH.sd) ** 2,
      chi2,
    );
  // Which readings belong to this beam, and its shape, do not depend on the backlash.
  const own = samples.filter((s) => !beam.otherLight.includes(s));
  let best: Beam | Solved = beam;
  for (const axis of AXES) {
    // Without a reversal every backlash gives the same beam.
    const shift = (s: Sample) => (s.pointing[axis][0] ?? 0) - (s.pointing[axis][1] ?? 0);
    if (samples.every((s) => shift(s) === shift(samples[0] as Sample))) continue;
    for (;;) {
      const backlash: PerAxis<number> = { ...best.backlash, [axis]: best.backlash[axis] + 1 };
      const next: Solved | undefined =
        backlash[axis] < BACKLASHES.length ? solveShape(own, meter, backlash, beam.shape) : undefined;
      if (!next || misfit(next) >= misfit(best)) break;
      best = next;
    }
  }
  return { ...('solution' in best ? beamOf(best) : best), otherLight: beam.otherLight };
}

/** Readings that scatter more than this around the best beam are not all of one beam. */
const fits = (beam: Beam | undefined, samples: readonly Sample[]): boolean =>
  !beam || beam.chi2 < 10 + 1.5 * samples.length;

/** A mistake that nobody noticed is only thought of where it leaves nothing to explain. */
const explainsWholly = (beam: Beam, samples: readonly Sample[]): boolean => beam.chi2 < samples.length + 6;

/** How many of the newest readings are tried alone if all together do not fit. */
const NEWEST = [16, 11, 8, 6, 4, 3];

/**
 * The readings that one beam explains, if needed with more backlash than the profile says. One wrong reading
 * spoils a fit and is left out; a wrong turn shifts every reading before it, so then only the newest count.
 */
function consistent(samples: readonly Sample[], search: Search): Learnt {
  const profile = profileBacklash(search.adjusters);
  const attempt = (
    some: readonly Sample[],
    backlash = { horizontal: profile, vertical: profile },
    rare = false,
  ) => ({
    samples: some,
    beam: fitBeam(some, search.meter, backlash, rare),
    isOneBeam: some.length === samples.length,
    slip: undefined,
  });
  const whole = attempt(samples);
  if (!whole.beam || fits(whole.beam, samples)) return whole;
  const { beam } = whole;
  const { backlash } = learnBacklash(beam, samples, search);
  // If none was learnt, the fit would be the same again.
  const loose = backlash === beam.backlash ? whole : attempt(samples, backlash);
  if (fits(loose.beam, samples)) return loose;
  const misses = samples.map((s) => missIn(beam, s));
  const worst = misses.indexOf(Math.max(...misses));
  const without = attempt(samples.filter((_, i) => i !== worst));
  if (worst < samples.length - 1 && fits(without.beam, without.samples)) return without;
  const rarely = attempt(samples, loose.beam?.backlash, true);
  if (fits(rarely.beam, samples)) return rarely;
  // Where the search begins anew anyway, nobody is asked about turns of long ago.
  const asks = !search.walk && !isUnproven(search) && !isRejected(search);
  const slip = asks ? bestSlip(samples, search.meter, beam, search.confirmed) : undefined;
  if (slip && explainsWholly(slip.beam, samples))
    return { samples: slip.samples, beam: slip.beam, isOneBeam: false, slip };
  for (const n of NEWEST) {
    if (n >= samples.length) continue;
    const newest = attempt(samples.slice(-n));
    if (fits(newest.beam, newest.samples)) return newest;
  }
  return attempt(samples.slice(-1));
}

/** How far a level misses the beam, in standard deviations. */
function missIn(beam: Beam, s: Sample): number {
  if (s.level.kind !== 'level' || beam.otherLight.includes(s)) return 0;
  const expected = predict(beam, s);
  return expected ? Math.abs(s.level.db - expected.value) / (s.level.sd + 0.05) : 0;
}
