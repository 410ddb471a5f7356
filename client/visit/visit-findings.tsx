import { useEffect, useState } from 'preact/hooks';
import { bySeverity, type Severity } from '../../src/model/finding.ts';
import type { JobId } from '../../src/model/ids.ts';
import { findingText, SEVERITY_WORDS, siteFindingText } from '../../src/phrases/findings.ts';
import type { SiteFindings } from '../../src/protocol/site.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from '../review/entry-links.tsx';
import { siteFindings } from '../site/requests.ts';

type Props = {
  token: string;
  job: JobId;
  record: VisitRecord;
} & Picks;

/** What a careful supervisor would ask about this visit, each with its entries. */
export function VisitFindings({ token, job, record, onPick }: Props) {
  const { findings, entries } = record;
  const { acrossSite, trouble } = useSiteFindings(token, job, entries.length);
  const lines = [
    ...findings.map((finding) => ({
      severity: finding.severity,
      text: findingText(finding),
      seqs: finding.entries,
    })),
    ...(acrossSite ?? []).map((finding) => ({
      severity: finding.severity,
      text: siteFindingText(finding),
      // Entries of other visits are not on this page.
      seqs: finding.entries.filter((entry) => entry.job === job).map(({ seq }) => seq),
    })),
  ];
  const sorted = bySeverity(lines);
  return (
    <section aria-labelledby="findings-title">
      <h2 id="findings-title">Findings</h2>
      {trouble && <p role="alert">The comparison with the other pairs could not be read. {trouble}</p>}
      {sorted.length === 0 && <p>No findings{acrossSite ? '' : ' in this record alone'}.</p>}
      <ul class="finding-list">
        {sorted.map(({ severity, text, seqs }) => (
          <li key={`${text} ${seqs.join()}`} class={`finding ${severity}`}>
            <SeverityWord severity={severity} />
            <span>
              {text} <EntryLinks seqs={seqs.slice(0, NAMED)} onPick={onPick} />
              {seqs.length > NAMED && ' and more'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** This many are named one by one. */
const NAMED = 6;

export const SeverityWord = ({ severity }: { severity: Severity }) => (
  <strong>{SEVERITY_WORDS[severity]}</strong>
);

/**
 * Findings from the comparison with other pairs, or why they could not be read. Both are missing while it is read.
 */
interface AcrossSite {
  acrossSite?: SiteFindings['site'];
  trouble?: string;
}

function useSiteFindings(token: string, job: JobId, count: number): AcrossSite {
  const [found, setFound] = useState<AcrossSite>({});
  useEffect(() => {
    let wanted = true;
    siteFindings(token, job).then(
      ({ site }) => wanted && setFound({ acrossSite: site }),
      (error: Error) => wanted && setFound((before) => ({ ...before, trouble: error.message })),
    );
    return () => {
      wanted = false;
    };
  }, [token, job, count]);
  return found;
}
