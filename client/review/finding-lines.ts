import type { Severity } from '../../src/model/finding.ts';
import type { Seq } from '../../src/model/ids.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { shownFor } from '../../src/phrases/units.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';

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
