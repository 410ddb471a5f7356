import type { JobId } from '../../src/model/ids.ts';
import { siteFindingText } from '../../src/phrases/findings.ts';
import { heldText } from '../../src/phrases/held.ts';
import { heldSetup } from '../../src/plan/held.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import type { Picks } from '../charts/marker.tsx';
import { linesOf } from '../review/finding-lines.ts';
import { FindingList } from '../review/finding-list.tsx';
import type { AcrossSite } from './use-site-findings.ts';

type Props = {
  job: JobId;
  record: VisitRecord;
  across: AcrossSite;
} & Picks;

/** What a careful supervisor would ask about this visit, each with its entries. */
export function VisitFindings({ job, record, across, onPick }: Props) {
  const setup = record.visit?.commission.setup;
  const { acrossSite, trouble } = across;
  const lines = [
    ...linesOf(record),
    ...(acrossSite ?? []).map((finding) => ({
      severity: finding.severity,
      text: siteFindingText(finding, setup?.units),
      // Entries of other visits are not on this page.
      seqs: finding.entries.filter((entry) => entry.job === job).map(({ seq }) => seq),
    })),
  ];
  return (
    <section aria-labelledby="findings-title">
      <h2 id="findings-title">Findings</h2>
      {trouble && <p role="alert">The comparison with the other pairs could not be read. {trouble}</p>}
      {lines.length === 0 && <p>No findings{acrossSite ? '' : ' in this record alone'}.</p>}
      <FindingList lines={lines} onPick={onPick} />
      {setup?.plan && <p class="note">{heldText(heldSetup(setup))}</p>}
    </section>
  );
}
