import { useMemo, useRef, useState } from 'preact/hooks';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import { METRES } from '../../src/model/units.ts';
import { wholePathText } from '../../src/phrases/units.ts';
import { checkPlan } from '../../src/plan/check.ts';
import { thresholdDb } from '../../src/plan/covers.ts';
import { heldPlan } from '../../src/plan/held.ts';
import type { PairRow, SiteView } from '../../src/protocol/site.ts';
import { follow, go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { moment } from '../browser/times.ts';
import { useSend } from '../browser/use-send.ts';
import { ownMeters, rememberMeter } from '../profiles/saved-profiles.ts';
import { troubledVisitsFirst } from '../site/live-rows.ts';
import { planPairs } from '../site/requests.ts';
import { SignalHistory } from '../site/signal-history.tsx';
import { SiteFrame } from '../site/site-frame.tsx';
import { SiteMasthead } from '../site/site-masthead.tsx';
import { StatusSign } from '../site/status-chip.tsx';
import { useSite } from '../site/use-site.ts';
import { Failure } from '../ui/failure.tsx';
import { showFirstError } from '../ui/first-error.ts';
import { Foot } from '../ui/foot.tsx';
import { MessagePage } from '../ui/message-page.tsx';
import { NotYet } from '../ui/not-yet.tsx';
import { BeginVisit } from './begin-visit.tsx';
import { Calculator } from './calculator.tsx';
import { CheckPanel } from './check-panel.tsx';
import { DropPair } from './drop-pair.tsx';
import { type PlanDraft, parsePlan, planDraft } from './plan-draft.ts';
import { PlanForm } from './plan-form.tsx';
import './planning.css';

/** The plan of one pair, checked while it is typed. Visits begin here. Without `pair`: the plan of a new one. */
export function PlanPage({ token, pair }: { token: string; pair: string }) {
  const site = useSite(token);
  if (!site.value) return <NotYet what="site" read={site} />;
  const row = site.value.pairs.find(({ plan }) => plan.id === pair);
  if (pair !== '' && !row) return <NoSuchPair token={token} pair={pair} />;
  return <Plan token={token} view={site.value} row={row} look={site.look} />;
}

const NoSuchPair = ({ token, pair }: { token: string; pair: string }) => (
  <MessagePage title={`There is no pair ${pair}`}>
    <p>It may have another id in the plan.</p>
    <a class="button main" href={linkTo('board', { token })} onClick={follow}>
      To the board
    </a>
  </MessagePage>
);

interface PlanProps {
  token: string;
  view: SiteView;
  row: PairRow | undefined;
  look: () => void;
}

function Plan({ token, view, row, look }: PlanProps) {
  const [draft, setDraft] = useState<PlanDraft>(() => planDraft(row?.plan, view.units));
  const [meters] = useState(() => [...ownMeters(browserStorage), ...NEUTRAL_METERS]);
  const [tried, setTried] = useState(false);
  const [kept, setKept] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const sending = useSend();
  const taken = row ? [] : view.pairs.filter(({ dropped }) => !dropped).map(({ plan }) => plan.id);
  const parsed = parsePlan(draft, taken);
  const figures = useMemo(() => checkPlan(parsed.known, view.code), [draft, view.code]);
  const desk = view.role === 'desk';
  const shown = { ...(view.units ?? METRES), path: parsed.known.pathLength };
  const thresholdLoss = thresholdDb(parsed.known);

  const submit = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    const { plan } = parsed;
    if (!plan) {
      showFirstError(form.current);
      return;
    }
    if (!(await sending.send({ pairs: [plan] }, (id, body) => planPairs(token, id, body)))) return;
    if (plan.meter) rememberMeter(browserStorage, plan.meter);
    setTried(false);
    setKept(true);
    // What was just saved is now what the fields began with.
    setDraft(planDraft(plan, view.units));
    look();
    if (!row) go(linkTo('plan', { token, pair: plan.id }));
  };

  return (
    <SiteFrame
      masthead={<SiteMasthead token={token} site={view.site} />}
      head={
        <h1>{row ? `${row.plan.id} ${row.plan.name === row.plan.id ? '' : row.plan.name}` : 'A new pair'}</h1>
      }
    >
      {row?.dropped && <p class="failure">Removed from the site: {row.dropped.reason}</p>}
      <div class="plan-columns">
        <div class="plan-column">
          {row && !row.dropped && desk && <BeginVisit token={token} view={view} row={row} />}
          {row && row.visits.length > 0 && <VisitLinks token={token} row={row} />}
          {row && <SignalHistory row={row} />}
          {desk ? (
            <form class="card" ref={form} onSubmit={submit} noValidate>
              <h2>Plan</h2>
              <PlanForm
                draft={draft}
                errors={tried ? parsed.errors : {}}
                meters={meters}
                fixedId={row !== undefined}
                thresholdHint={
                  thresholdLoss === undefined || draft.alarmUnit === 'dB'
                    ? undefined
                    : wholePathText(thresholdLoss)
                }
                onInput={(next) => {
                  setDraft(next);
                  setKept(false);
                }}
              />
              <Foot>
                <Failure text={sending.failure} />
                <p role="status" class="hint">
                  {kept ? 'Saved. Visits that have already begun keep their old plan.' : ''}
                </p>
                <button type="submit" class="button main" disabled={sending.busy}>
                  {sending.busy ? 'Saving' : row ? 'Save the plan' : 'Add the pair'}
                </button>
              </Foot>
            </form>
          ) : (
            <p class="hint">Read only: only the desk can change the plan.</p>
          )}
          {row && !row.dropped && desk && <DropPair token={token} pair={row.plan.id} onDropped={look} />}
        </div>
        <div class="plan-column">
          <CheckPanel figures={figures} shown={shown} held={heldPlan(parsed.known, view.code)} />
          <Calculator path={parsed.known.pathLength} units={shown} />
        </div>
      </div>
    </SiteFrame>
  );
}

const VisitLinks = ({ token, row }: { token: string; row: PairRow }) => (
  <section class="card">
    <h2>Visits</h2>
    <ul class="visits">
      {troubledVisitsFirst(row.visits).map(({ job, at, status }) => (
        <li key={job}>
          <a class="button" href={linkTo('visit', { token, job })} onClick={follow}>
            {moment(at)}
          </a>{' '}
          <StatusSign status={status} />
        </li>
      ))}
    </ul>
  </section>
);
