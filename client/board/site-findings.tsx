import { useState } from 'preact/hooks';
import { bySeverity, type Severity } from '../../src/model/finding.ts';
import type { Units } from '../../src/model/units.ts';
import { findingText, siteFindingText } from '../../src/phrases/findings.ts';
import { SEVERITY_WORDS } from '../../src/phrases/severities.ts';
import type { PairRow, SiteFindings } from '../../src/protocol/site.ts';
import { follow, linkTo } from '../browser/route.ts';
import { siteFindings } from '../site/requests.ts';
import '../ui/finding-list.css';

/** What a careful supervisor would ask, across the whole site. Read only when opened: it needs every log. */
export function SiteFindingsPanel({
  token,
  pairs,
  units,
}: {
  token: string;
  pairs: readonly PairRow[];
  units: Units | undefined;
}) {
  const [found, setFound] = useState<SiteFindings>();
  const [trouble, setTrouble] = useState<string>();
  const read = () => {
    setTrouble(undefined);
    siteFindings(token).then(setFound, (error: Error) => setTrouble(error.message));
  };
  const count = pairs.reduce((sum, { findings: f }) => sum + f.serious + f.question + f.note, 0);
  const soFar = pairs.some(({ status }) => !status) ? ' so far' : '';
  return (
    <details
      class="more site-findings"
      // Read again each time it is opened.
      onToggle={(event) => (event.currentTarget as HTMLDetailsElement).open && read()}
    >
      <summary>
        {count === 0 ? 'No findings on the latest visits' : `Findings across the site: ${count}`}
        {soFar}
      </summary>
      {trouble && (
        <p class="failure" role="alert">
          {trouble}{' '}
          <button type="button" class="button" onClick={read}>
            Try again
          </button>
        </p>
      )}
      {found ? (
        <Found found={found} token={token} pairs={pairs} units={units} />
      ) : (
        !trouble && <p>Reading every log</p>
      )}
    </details>
  );
}

interface FindingLine {
  pair: string;
  job: string | undefined;
  severity: Severity;
  text: string;
}

/** Findings of each pair's latest visit, and of the pairs compared with each other, the most serious first. */
export function findingLines(
  { perPair, site }: SiteFindings,
  pairs: readonly PairRow[],
  units?: Units,
): FindingLine[] {
  const latest = new Map(pairs.map(({ plan, visits }) => [plan.id, visits.at(-1)?.job]));
  const lines: FindingLine[] = [
    ...site.map((finding) => ({
      pair: finding.pair,
      job: finding.entries.at(-1)?.job,
      severity: finding.severity,
      text: siteFindingText(finding, units),
    })),
    ...perPair.flatMap(({ pair, job, findings }) =>
      latest.get(pair) === job
        ? findings.map((finding) => ({
            pair,
            job,
            severity: finding.severity,
            text: findingText(finding, units),
          }))
        : [],
    ),
  ];
  return bySeverity(lines);
}

function Found({
  found,
  token,
  pairs,
  units,
}: {
  found: SiteFindings;
  token: string;
  pairs: readonly PairRow[];
  units: Units | undefined;
}) {
  const lines = findingLines(found, pairs, units);
  if (lines.length === 0) return <p>No findings.</p>;
  return (
    <ul class="finding-list">
      {lines.map(({ pair, job, severity, text }) => (
        <li key={`${pair} ${text}`} class={`finding ${severity}`}>
          <strong>{SEVERITY_WORDS[severity]}</strong>
          <span>{text}</span>
          {job && (
            <a href={linkTo('visit', { token, job })} onClick={follow}>
              {pair}
            </a>
          )}
        </li>
      ))}
    </ul>
  );
}
