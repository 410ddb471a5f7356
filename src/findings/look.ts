import type { Finding, FindingId } from '../model/finding.ts';
import type { Story } from '../visit/visit.ts';

/** One thing to look for. Sees the whole story, finds it or not, in the order of the entries. */
export type Look = (story: Story) => Finding[];

type Rests = Pick<Finding, 'severity' | 'entries'> & Partial<Pick<Finding, 'figures' | 'about'>>;

export const found = (id: FindingId, { severity, entries, figures = {}, about = [] }: Rests): Finding => ({
  id,
  severity,
  entries,
  figures,
  about,
});
