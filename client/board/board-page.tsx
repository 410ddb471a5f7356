import { useMemo, useState } from 'preact/hooks';
import { TROUBLE_FIRST } from '../../src/model/pair-status.ts';
import { heldOnSite, NOT_CHECKED } from '../../src/phrases/held.ts';
import { GUIDANCE_ONLY } from '../../src/phrases/plan-formulas.ts';
import { warningsInShort } from '../../src/phrases/plan-warnings-desk.ts';
import { STATUS_WORDS } from '../../src/phrases/statuses.ts';
import { heldPlan } from '../../src/plan/held.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { follow, go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { clock } from '../browser/times.ts';
import { KeyList } from '../keys/key-list.tsx';
import { ReportButton } from '../report/report-button.tsx';
import { forgetSite, savedSites, saveSite } from '../saved/saved-sites.ts';
import { DamageAlert } from '../site/damage.tsx';
import { liveRows } from '../site/live-rows.ts';
import { SiteFrame } from '../site/site-frame.tsx';
import { StampingLine } from '../site/stamping-line.tsx';
import { StatusShape } from '../site/status-chip.tsx';
import type { Polled } from '../site/use-polled.ts';
import { useSite } from '../site/use-site.ts';
import { useMoreAndMore } from '../ui/in-steps.ts';
import { Masthead } from '../ui/masthead.tsx';
import { NotYet } from '../ui/not-yet.tsx';
import { ShareLink } from '../ui/share-link.tsx';
import { PairRow } from './pair-row.tsx';
import { matching, totals, troubleFirst, type Wanted, withWarnings } from './rows.ts';
import { SiteFindingsPanel } from './site-findings.tsx';
import { SiteSteps } from './site-steps.tsx';
import { SiteUnits } from './site-units.tsx';
import './board.css';

/** Every pair of a site: its status, who is on it, and what is next. */
export function BoardPage({ token }: { token: string }) {
  const site = useSite(token);
  if (!site.value) return <NotYet what="site" read={site} />;
  return <Board token={token} view={site.value} site={site} />;
}

/** More rows than a large screen holds. */
const SCREENFUL = 40;

function Board({ token, view, site }: { token: string; view: SiteView; site: Polled<SiteView> }) {
  const [wanted, setWanted] = useState<Wanted>({ words: '', status: 'all' });
  const listed = useMemo(() => troubleFirst(withWarnings(liveRows(view.pairs), view)), [view]);
  const rows = useMemo(() => listed.map(({ row }) => row), [listed]);
  const dropped = view.pairs.filter((row) => row.dropped);
  const shown = useMemo(() => matching(listed, wanted), [listed, wanted]);
  const drawn = useMoreAndMore(shown.length, SCREENFUL);
  const unread = rows.filter(({ status }) => !status).length;
  const desk = view.role === 'desk';
  const [exchangedWatch, setWatch] = useState<string>();
  const watch = exchangedWatch ?? savedSites(browserStorage).find((saved) => saved.token === token)?.watch;
  /** A link of this site has another token from now on. */
  const exchanged = (role: 'watcher' | 'desk', next: string) => {
    const changed = role === 'desk' ? { token: next, ...(watch && { watch }) } : { token, watch: next };
    saveSite(browserStorage, { site: view.site, ...changed });
    if (role === 'watcher') return setWatch(next);
    forgetSite(browserStorage, token);
    go(linkTo('board', { token: next }));
  };
  return (
    <SiteFrame
      masthead={<Masthead />}
      head={
        <>
          <div>
            <h1>{view.site}</h1>
            {!desk && <p class="hint">Read only</p>}
          </div>
          <LastLook site={site} />
        </>
      }
    >
      <DamageAlert damage={view.damage} token={token} />
      <StampingLine stamping={view.stamping} />
      <nav class="site-ways" aria-label="This site">
        {desk && (
          <>
            <a class="button" href={linkTo('plan', { token })} onClick={follow}>
              Add a pair
            </a>
            <a class="button" href={linkTo('import', { token })} onClick={follow}>
              From a table
            </a>
          </>
        )}
        <ReportButton token={token} />
      </nav>
      {rows.length === 0 ? (
        <Empty desk={desk} />
      ) : (
        <>
          <Totals rows={rows} wanted={wanted} onWant={setWanted} />
          <input
            class="site-search"
            type="search"
            aria-label="Search pairs"
            placeholder="Search by id, name, zone, or what is next"
            value={wanted.words}
            onInput={(event) => setWanted({ ...wanted, words: event.currentTarget.value })}
          />
          <p class="hint" role="status">
            {shown.length === rows.length
              ? `${rows.length} ${rows.length === 1 ? 'pair' : 'pairs'}`
              : `${shown.length} of ${rows.length} pairs`}
            {'. Trouble stands first'}
            {unread > 0 && `. The records of ${unread} are not read yet`}
          </p>
          <ul class="pair-rows">
            {shown.slice(0, drawn).map(({ row, warnings }) => (
              <PairRow key={row.plan.id} row={row} token={token} warning={warningsInShort(warnings)} />
            ))}
          </ul>
          {shown.length === 0 && (
            <p>
              No pair matches.{' '}
              <button type="button" class="button" onClick={() => setWanted({ words: '', status: 'all' })}>
                Show all
              </button>
            </p>
          )}
          <HeldAgainst view={view} rows={rows} />
          <SiteFindingsPanel token={token} pairs={rows} units={view.units} />
        </>
      )}
      {dropped.length > 0 && (
        <details class="more">
          <summary>Removed from the site: {dropped.length}</summary>
          <ul class="dropped">
            {dropped.map(({ plan, dropped: why }) => (
              <li key={plan.id}>
                <strong>{plan.id}</strong> {plan.name !== plan.id && plan.name}: {why?.reason}
              </li>
            ))}
          </ul>
        </details>
      )}
      {desk && <SiteUnits token={token} units={view.units} onChosen={site.look} />}
      {desk && <SiteSteps token={token} steps={view.steps} onDefined={site.look} />}
      {desk && (
        <details class="more">
          <summary>Who has a key to this site</summary>
          <KeyList token={token} onExchanged={exchanged} />
        </details>
      )}
      {watch && (
        <section class="site-share">
          <h2>For a supervisor: this board, read only</h2>
          <ShareLink label="Link to the board" to={linkTo('board', { token: watch })} />
        </section>
      )}
    </SiteFrame>
  );
}

/** What the plans were held against, and what of them was not. */
function HeldAgainst({ view: { code }, rows }: { view: SiteView; rows: SiteView['pairs'] }) {
  const held = useMemo(
    () =>
      heldOnSite(
        code,
        rows.map(({ plan }) => heldPlan(plan, code)),
      ),
    [code, rows],
  );
  return (
    <details class="more">
      <summary>{held.text}</summary>
      {held.not.length > 0 && (
        <>
          <p>{NOT_CHECKED}:</p>
          <ul class="dropped">
            {held.not.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
      <p class="hint">{GUIDANCE_ONLY}</p>
    </details>
  );
}

/** When the board was last read. */
function LastLook({ site: { at, trouble, look } }: { site: Polled<SiteView> }) {
  return (
    <p class={trouble ? 'site-look failure' : 'site-look hint'} role={trouble ? 'alert' : undefined}>
      {trouble && `${trouble} `}
      {at !== undefined && (
        <>
          Last updated {clock(at, true)}
          {trouble && '. This may be out of date. '}
        </>
      )}
      {trouble && (
        <button type="button" class="button" onClick={look}>
          Read again
        </button>
      )}
    </p>
  );
}

function Totals({
  rows,
  wanted,
  onWant,
}: {
  rows: SiteView['pairs'];
  wanted: Wanted;
  onWant: (wanted: Wanted) => void;
}) {
  const counts = totals(rows);
  return (
    <fieldset class="site-totals">
      <legend class="away">Show pairs that are</legend>
      {TROUBLE_FIRST.map((status) => {
        const on = wanted.status === status;
        return (
          <button
            key={status}
            type="button"
            class={`total is-${status}`}
            aria-pressed={on}
            onClick={() => onWant({ ...wanted, status: on ? 'all' : status })}
          >
            <StatusShape status={status} />
            <strong>{counts[status]}</strong>
            <span class="total-word">{STATUS_WORDS[status]}</span>
          </button>
        );
      })}
    </fieldset>
  );
}

const Empty = ({ desk }: { desk: boolean }) => (
  <section class="card">
    <h2>No pairs yet</h2>
    <p>
      {desk
        ? 'Add the pairs of this site one by one, or import them from a table. Each is checked before the ladder goes up.'
        : 'No pair is planned yet. This page shows new pairs by itself.'}
    </p>
  </section>
);
