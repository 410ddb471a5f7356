import { useState } from 'preact/hooks';
import { bySeverity, type Severity } from '../../src/model/finding.ts';
import { findingText, SEVERITY_WORDS, siteFindingText } from '../../src/phrases/findings.ts';
import type { PairRow, SiteFindings } from '../../src/protocol/site.ts';
import { follow, linkTo } from '../browser/route.ts';
import { siteFindings } from '../site/requests.ts';

/** What a careful supervisor would ask, across the whole site. Read when it is opened: it looks at every log. */
export function SiteFindingsPanel({ token, pairs }: { token: string; pairs: readonly PairRow[] }) {
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
      // It is read again each time it is opened.
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
      {found ? <Found found={found} token={token} pairs={pairs} /> : !trouble && <p>Reading every log</p>}
    </details>
  );
}

interface Told {
  pair: string;
  job: string | undefined;
  severity: Severity;
  text: string;
}

/** Findings of the latest visit of each pair, and of the pairs held against each other, the weightiest first. */
export function toldFindings({ perPair, site }: SiteFindings, pairs: readonly PairRow[]): Told[] {
  const latest = new Map(pairs.map(({ plan, visits }) => [plan.id, visits.at(-1)?.job]));
  const told: Told[] = [
    ...site.map((finding) => ({
      pair: finding.pair,
      job: finding.entries.at(-1)?.job,
      severity: finding.severity,
      text: siteFindingText(finding),
    })),
    ...perPair.flatMap(({ pair, job, findings }) =>
      latest.get(pair) === job
        ? findings.map((finding) => ({ pair, job, severity: finding.severity, text: findingText(finding) }))
        : [],
    ),
  ];
  return bySeverity(told);
}

function Found({ found, token, pairs }: { found: SiteFindings; token: string; pairs: readonly PairRow[] }) {
  const told = toldFindings(found, pairs);
  if (told.length === 0) return <p>Nothing to ask.</p>;
  return (
    <ul class="finding-list">
      {told.map(({ pair, job, severity, text }) => (
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
