import type { Entry } from '../../src/model/entry.ts';

/** What a log is of, as its first entry says: a site, or a pair there. */
export function placeOf(first: Entry | undefined): { site?: string; pair?: string } {
  if (first?.fact.type === 'site-opened') return { site: first.fact.site };
  if (first?.fact.type !== 'opened') return {};
  const { site, pair } = first.fact.setup;
  return { site, pair };
}
