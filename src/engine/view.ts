import type { Seq } from '../advice.ts';
import type { MeterProfile } from '../profile.ts';
import { AXES } from '../turns.ts';
import { type Beam, fitBeam, predict } from './beam.ts';
import { type PerAxis, type Sample, type Search, sampleHere } from './search.ts';
import { LASHES, profileLash } from './slack.ts';
import { openQuestion, type Surprise, surprise } from './surprise.ts';

/**
 * What can be told from a search at a glance: the reading here, all that count, and the beam they draw. The
 * beam is fitted when it is first asked for.
 */
export interface View {
  readonly search: Search;
  readonly here: Sample | undefined;
  readonly samples: readonly Sample[];
  readonly beam: Beam | undefined;
  /** What the reading here contradicts, if it does. */
  readonly surprise: Surprise | undefined;
  /** One beam explains every reading. */
  readonly isOneBeam: boolean;
}

// A search never changes, so what was made of it holds; one decision looks at it several times.
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
  };
  seen.set(search, view);
  return view;
}

type Explained = Pick<View, 'samples' | 'beam' | 'surprise' | 'isOneBeam'>;

/** A reading that cannot be waits for its question: until then the beam is what it was before. */
function explain(search: Search, here: Sample | undefined): Explained {
  const past = explainPast(search);
  if (!here) return past;
  const found = past.beam && surprise(past.beam, past.samples, here, search);
  if (found && openQuestion(search, here, found)) {
    return { ...past, samples: [...past.samples, here], surprise: found };
  }
  const since = search.samples.filter((s) => counts(s, search));
  return { ...learnt([...since, here], search), surprise: found };
}

const counts = (s: Sample, { anew }: Search): boolean => (s.seqs[s.seqs.length - 1] ?? 0) >= anew;

// The readings of earlier stays are the same all through this one.
const pasts = new WeakMap<Search['samples'], Explained & { readonly anew: Seq }>();

function explainPast(search: Search): Explained {
  const known = pasts.get(search.samples);
  if (known && known.anew === search.anew) return known;
  const since = search.samples.filter((s) => counts(s, search));
  const past = { ...learnt(since, search), surprise: undefined, anew: search.anew };
  pasts.set(search.samples, past);
  return past;
}

function learnt(samples: readonly Sample[], search: Search): Omit<Explained, 'surprise'> {
  const lash = profileLash(search.adjusters);
  const explained = consistent(samples, search.meter, { horizontal: lash, vertical: lash });
  return { ...explained, beam: explained.beam && learnLash(explained.beam, explained.samples, search) };
}

/** Readings a lash can be learnt from, and how far it may differ from the profile's, eighths. */
const LASH = { levels: 6, sd: 1 };

/** Tries larger lashes than the profile's while they explain the readings better. */
function learnLash(beam: Beam, samples: readonly Sample[], { meter, adjusters }: Search): Beam {
  if (samples.filter((s) => s.level.kind === 'level').length < LASH.levels) return beam;
  const misfit = (b: Beam) =>
    AXES.reduce((sum, axis) => sum + (((LASHES[b.lash[axis]] ?? 0) - adjusters.lash) / LASH.sd) ** 2, b.chi2);
  let best = beam;
  for (const axis of AXES) {
    // Without a reversal every lash draws the same picture.
    const shift = (s: Sample) => (s.pointing[axis][0] ?? 0) - (s.pointing[axis][1] ?? 0);
    if (samples.every((s) => shift(s) === shift(samples[0] as Sample))) continue;
    for (;;) {
      const lash = { ...best.lash, [axis]: best.lash[axis] + 1 };
      const next = lash[axis] < LASHES.length ? fitBeam(samples, meter, lash) : undefined;
      if (!next || misfit(next) >= misfit(best)) break;
      best = next;
    }
  }
  return best;
}

/** Readings that scatter more than this about the best beam are not all of one beam. */
const fits = (beam: Beam | undefined, samples: readonly Sample[]): boolean =>
  !beam || beam.chi2 < 10 + 3 * samples.length;

/** How many of the newest readings are tried by themselves where all together do not fit. */
const NEWEST = [16, 11, 8, 6, 4, 3];

/**
 * The readings one beam explains. One misread spoils a fit by itself and is left out; a wrong turn shifts
 * every reading before it, so then the newest count.
 */
function consistent(
  samples: readonly Sample[],
  meter: MeterProfile,
  lash: PerAxis<number>,
): Omit<Explained, 'surprise'> {
  const attempt = (some: readonly Sample[]) => ({
    samples: some,
    beam: fitBeam(some, meter, lash),
    isOneBeam: some.length === samples.length,
  });
  const whole = attempt(samples);
  if (!whole.beam || fits(whole.beam, samples)) return whole;
  const { beam } = whole;
  const misses = samples.map((s) => missIn(beam, s));
  const worst = misses.indexOf(Math.max(...misses));
  const without = attempt(samples.filter((_, i) => i !== worst));
  if (worst < samples.length - 1 && fits(without.beam, without.samples)) return without;
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
