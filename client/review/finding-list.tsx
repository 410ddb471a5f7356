import { bySeverity } from '../../src/model/finding.ts';
import { SEVERITY_WORDS } from '../../src/phrases/severities.ts';
import type { Picks } from '../charts/marker.tsx';
import '../ui/finding-list.css';
import { EntryLinks } from './entry-links.tsx';
import type { FindingLine } from './finding-lines.ts';

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
