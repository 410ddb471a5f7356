import { useEffect, useState } from 'preact/hooks';
import {
  behindText,
  damagedText,
  driftingText,
  FIGURES_ARE,
  halfText,
  lostText,
  mostText,
  NO_FINDINGS,
  NOT_TIMED,
  NOTHING_DUE,
  overText,
  timedText,
} from '../../src/phrases/figures-page.ts';
import { findingName, siteFindingName } from '../../src/phrases/findings.ts';
import { SEVERITY_WORDS } from '../../src/phrases/severities.ts';
import { Figures } from '../../src/protocol/figures.ts';
import { request } from '../browser/requests.ts';
import { day, duration } from '../browser/times.ts';
import { useAct } from '../browser/use-act.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import { SignIn } from './sign-in.tsx';
import './figures.css';

/** All sites of the firm in figures, for a supervisor. */
export function FiguresPage() {
  const [figures, setFigures] = useState<Figures>();
  const { failure, act } = useAct();
  const look = () => void act(() => request('/api/figures', Figures), setFigures);
  useEffect(look, []);
  return (
    <Page class="figures">
      <section class="card">
        <h1>All sites</h1>
        {!figures && !failure && <p class="hint">Loading</p>}
        <Failure text={failure?.text} />
        {failure?.reason === 'locked' && <SignIn onSignedIn={look} />}
        {figures && <Whole of={figures} />}
      </section>
      {figures && (
        <>
          <Drifting of={figures.drifting} />
          <Due of={figures.due} />
          <Ladder of={figures.ladder} />
          <Findings of={figures.findings} />
        </>
      )}
    </Page>
  );
}

const Whole = ({ of: { pairs, sites, behind, damaged } }: { of: Figures }) => (
  <>
    <p class="whole">{overText(pairs, sites)}</p>
    {damaged > 0 && (
      <p class="figures-damaged" role="alert">
        {damagedText(damaged)}
      </p>
    )}
    {behind > 0 && <p>{behindText(behind)}</p>}
    <p class="hint">{FIGURES_ARE}</p>
  </>
);

const Drifting = ({ of: { pairs, compared, most } }: { of: Figures['drifting'] }) => (
  <section class="card">
    <h2>Weaker since commissioning</h2>
    <p>{driftingText(pairs, compared)}</p>
    <Named
      rows={most.map(({ lost, ...row }) => ({ ...row, ...(lost !== undefined && { says: lostText(lost) }) }))}
    />
  </section>
);

function Due({ of: { over, soon, later, none, next } }: { of: Figures['due'] }) {
  return (
    <section class="card">
      <h2>Visits due</h2>
      <dl class="counts">
        <Count label="Overdue" n={over} />
        <Count label="Within 30 days" n={soon} />
        <Count label="Later" n={later} />
        <Count label="No date" n={none} />
      </dl>
      {next.length === 0 && <p class="hint">{NOTHING_DUE}</p>}
      <Named rows={next.map(({ due, ...row }) => ({ ...row, says: day(due) }))} />
    </section>
  );
}

const Ladder = ({ of: { pairs, half, most } }: { of: Figures['ladder'] }) => (
  <section class="card">
    <h2>Time on the ladder</h2>
    {half === undefined || most === undefined ? (
      <p class="hint">{NOT_TIMED}</p>
    ) : (
      <>
        <p>{halfText(duration(half))}</p>
        <p>{mostText(duration(most))}</p>
        <p class="hint">{timedText(pairs)}</p>
      </>
    )}
  </section>
);

const Findings = ({ of: found }: { of: Figures['findings'] }) => (
  <section class="card">
    <h2>Findings at the latest visit</h2>
    {found.length === 0 && <p class="hint">{NO_FINDINGS}</p>}
    <dl class="counts">
      {found.map(({ id, severity, pairs }) => (
        <div key={`${id} ${severity}`}>
          <dt>
            <span class={`severity ${severity}`}>{SEVERITY_WORDS[severity]}</span> <span>{nameOf(id)}</span>
          </dt>
          <dd translate={false}>{pairs}</dd>
        </div>
      ))}
    </dl>
  </section>
);

/** One of the two knows it; the other gives the id back. */
const nameOf = (id: string): string => (findingName(id) === id ? siteFindingName(id) : findingName(id));

const Count = ({ label, n }: { label: string; n: number }) => (
  <div>
    <dt>{label}</dt>
    <dd translate={false}>{n}</dd>
  </div>
);

/** Pairs by name, with what is said of each. */
const Named = ({ rows }: { rows: readonly { site: string; log: string; pair: string; says?: string }[] }) => (
  <ul class="named">
    {rows.map(({ site, log, pair, says }) => (
      <li key={`${log} ${pair}`}>
        <span translate={false}>
          <strong>{pair}</strong> {site}
        </span>
        {says !== undefined && <span>{says}</span>}
      </li>
    ))}
  </ul>
);
