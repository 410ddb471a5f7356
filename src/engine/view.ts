import { type Beam, fitBeam } from './beam.ts';
import { type Sample, type Search, sampleHere } from './search.ts';
import { profileLash } from './slack.ts';

/** What can be told from a search at a glance: the reading here, all that count, and the beam they draw. */
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
  const all = here ? [...search.samples, here] : search.samples;
  const samples = all.filter((s) => (s.seqs[s.seqs.length - 1] ?? 0) >= search.anew);
  const lash = profileLash(search.adjusters);
  const beam = fitBeam(samples, search.meter, { horizontal: lash, vertical: lash });
  const view = { search, here, samples, beam };
  seen.set(search, view);
  return view;
}
