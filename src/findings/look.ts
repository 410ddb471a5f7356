import type { Finding, FindingId } from '../model/finding.ts';
import type { Visit } from '../visit/visit.ts';

/** One thing to look for. Sees the whole visit, finds it or not, in the order of the entries. */
export type Look = (visit: Visit) => Finding[];

type Rests = Pick<Finding, 'severity' | 'entries'> & Partial<Pick<Finding, 'figures' | 'about'>>;

export const found = (id: FindingId, { severity, entries, figures = {}, about = [] }: Rests): Finding => ({
  id,
  severity,
  entries,
  figures,
  about,
});
