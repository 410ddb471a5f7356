import type { MeterProfile } from '../profile.ts';
import { AXES } from '../turns.ts';
import { type Beam, fitBeam, predict } from './beam.ts';
import { type PerAxis, type Sample, type Search, sampleHere } from './search.ts';
import { LASHES, profileLash } from './slack.ts';

/**
 * What can be told from a search at a glance: the reading here, all that count, and the beam they draw. The
 * beam is fitted when it is first asked for.
 */
export interface View {
  readonly search: Search;
  readonly here: Sample | undefined;
  readonly samples: readonly Sample[];
  readonly beam: Beam | undefined;
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
  };
  seen.set(search, view);
  return view;
}

function explain(search: Search, here: Sample | undefined): Explained {
  const all = here ? [...search.samples, here] : search.samples;
  const since = all.filter((s) => (s.seqs[s.seqs.length - 1] ?? 0) >= search.anew);
  const lash = profileLash(search.adjusters);
  const explained = consistent(since, search.meter, { horizontal: lash, vertical: lash });
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

type Explained = Pick<View, 'samples' | 'beam'>;

/** Readings that scatter more than this about the best beam are not all of one beam. */
const fits = (beam: Beam | undefined, samples: readonly Sample[]): boolean =>
  !beam || beam.chi2 < 10 + 3 * samples.length;

/** How many of the newest readings are tried by themselves where all together do not fit. */
const NEWEST = [16, 11, 8, 6, 4, 3];

/**
 * The readings one beam explains. One misread spoils a fit by itself and is left out; a wrong turn shifts
 * every reading before it, so then the newest count.
 */
function consistent(samples: readonly Sample[], meter: MeterProfile, lash: PerAxis<number>): Explained {
  const attempt = (some: readonly Sample[]): Explained => ({
    samples: some,
    beam: fitBeam(some, meter, lash),
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
