import { bySeverity, type Severity } from '../../src/model/finding.ts';
import type { JobId } from '../../src/model/ids.ts';
import { findingText, SEVERITY_WORDS, siteFindingText } from '../../src/phrases/findings.ts';
import { heldText } from '../../src/phrases/held.ts';
import { shownFor } from '../../src/phrases/units.ts';
import { heldSetup } from '../../src/plan/held.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from '../review/entry-links.tsx';
import type { AcrossSite } from './use-site-findings.ts';

type Props = {
  job: JobId;
  record: VisitRecord;
  across: AcrossSite;
} & Picks;

/** What a careful supervisor would ask about this visit, each with its entries. */
export function VisitFindings({ job, record, across, onPick }: Props) {
  const { findings } = record;
  const setup = record.visit?.commission.setup;
  const { acrossSite, trouble } = across;
  const lines = [
    ...findings.map((finding) => ({
      severity: finding.severity,
      text: findingText(finding, setup && shownFor(setup)),
      seqs: finding.entries,
    })),
    ...(acrossSite ?? []).map((finding) => ({
      severity: finding.severity,
      text: siteFindingText(finding, setup?.units),
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
      {setup?.plan && <p class="note">{heldText(heldSetup(setup))}</p>}
    </section>
  );
}

/** This many are named one by one. */
const NAMED = 6;

export const SeverityWord = ({ severity }: { severity: Severity }) => (
  <strong>{SEVERITY_WORDS[severity]}</strong>
);
