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

export function look(search: Search): View {
  const here = sampleHere(search);
  const samples = here ? [...search.samples, here] : search.samples;
  const lash = profileLash(search.adjusters);
  const beam = fitBeam(samples, search.meter, { horizontal: lash, vertical: lash });
  return { search, here, samples, beam };
}
