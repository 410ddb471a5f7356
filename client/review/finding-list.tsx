import { bySeverity, type Severity } from '../../src/model/finding.ts';
import type { Seq } from '../../src/model/ids.ts';
import { findingText, SEVERITY_WORDS } from '../../src/phrases/findings.ts';
import { shownFor } from '../../src/phrases/units.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import type { Picks } from '../charts/marker.tsx';
import '../ui/finding-list.css';
import { EntryLinks } from './entry-links.tsx';

/** One finding in words, with the entries of this record that it rests on. */
export interface FindingLine {
  severity: Severity;
  text: string;
  seqs: readonly Seq[];
}

export const linesOf = ({ findings, visit }: VisitRecord): FindingLine[] =>
  findings.map((finding) => ({
    severity: finding.severity,
    text: findingText(finding, visit && shownFor(visit.commission.setup)),
    seqs: finding.entries,
  }));

/** What a careful supervisor would ask, the most serious first. */
export const FindingList = ({ lines, onPick }: { lines: readonly FindingLine[] } & Picks) => (
  <ul class="finding-list">
    {bySeverity(lines).map(({ severity, text, seqs }) => (
      <li key={`${text} ${seqs.join()}`} class={`finding ${severity}`}>
        <strong>{SEVERITY_WORDS[severity]}</strong>
        <span>
          {text} <EntryLinks seqs={seqs.slice(0, NAMED)} onPick={onPick} />
          {seqs.length > NAMED && ' and more'}
        </span>
      </li>
    ))}
  </ul>
);

/** This many are named one by one. */
const NAMED = 6;
