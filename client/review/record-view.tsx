import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { series } from '../../src/log/series.ts';
import { hasNoNumbers } from '../../src/model/alone.ts';
import type { Log } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import { NO_NUMBERS_DRAWN } from '../../src/phrases/looking.ts';
import { RECORD_OF } from '../../src/phrases/visits.ts';
import { exchange } from '../../src/record/exchange.ts';
import type { Heading } from '../../src/record/heading.ts';
import { searchOf } from '../../src/visit/search.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { TimeChart } from '../charts/time-chart.tsx';
import { TurnsChart } from '../charts/turns-chart.tsx';
import '../charts/charts.css';
import { usePartByPart } from '../ui/after-paint.ts';
import { fileName } from '../ui/download.ts';
import { MessagePage } from '../ui/message-page.tsx';
import { showEntry } from './entry-links.tsx';
import { ExchangeView } from './exchange-view.tsx';
import type { Grown } from './log.ts';
import { Replay, type Shown, shownCount } from './replay.tsx';
import { Seal } from './seal.tsx';
import type { Listener } from './sound.tsx';
import { AcceptedHow, Counters, Figures, Verdict } from './summary.tsx';
import './review.css';
import './print.css';

/** A narrow screen shows one of the two. A wide screen and paper show both. */
const VIEWS = ['exchange', 'charts'] as const;
type View = (typeof VIEWS)[number];
/** The exchange and three charts. */
const LONG_PARTS = 4;
const VIEW_NAME: { [view in View]: string } = { exchange: 'Exchange', charts: 'Charts' };

interface RecordViewProps extends Grown {
  heading: Heading;
  /** Who may listen to what was said; missing where nothing is kept. */
  listener?: Listener;
  /** The buttons to save or print it. */
  saves: (name: string, print: () => void) => ComponentChildren;
  /** What stands between the verdict and the figures: the findings first. */
  children: (pick: (seq: Seq) => void) => ComponentChildren;
}

/** One log: verdict, findings, figures, replay, charts and exchange; then counts, hashes and files. */
export function RecordView({ log, record, heading, listener, trouble, saves, children }: RecordViewProps) {
  const { entries, head } = log;
  const { fault, state, series: whole } = record;
  const [shown, setShown] = useState<Shown>('all');
  const [view, setView] = useState<View>('charts');
  const [wanted, setWanted] = useState('');
  // The summary and the findings are drawn first: the exchange and the charts are long, and each is a part.
  const drawn = usePartByPart(LONG_PARTS);
  const count = shownCount(shown, entries);
  const until = useMemo(() => (shown === 'all' ? entries : entries.slice(0, count)), [shown, entries, count]);
  const then = useMemo(() => (shown === 'all' ? whole : series(until)), [shown, whole, until]);
  const search = useMemo(
    () => searchOf(shown === 'all' ? state : until.reduce(fold, EMPTY)),
    [shown, state, until],
  );
  const { setup } = state;
  const passages = useMemo(
    () => (drawn > 0 ? exchange(until, setup?.meter) : []),
    [drawn > 0, until, setup?.meter],
  );
  usePrintedFooter(log);

  const pick = useCallback(
    (seq: Seq) => {
      if (seq >= count) setShown('all');
      setWanted('');
      setView('exchange');
      // After the entry has been drawn.
      setTimeout(() => showEntry(seq));
    },
    [count],
  );
  const print = () => {
    setShown('all');
    setWanted('');
    setTimeout(() => window.print());
  };

  // While a page is open its link says something every two seconds: what is the same as before is not drawn again.
  const meter = setup?.meter;
  const exchanged = useMemo(
    () => (
      <section class="exchange-part" aria-labelledby="exchange-title">
        <h2 id="exchange-title">Exchange</h2>
        <ExchangeView
          passages={passages}
          wanted={wanted}
          onWant={setWanted}
          follow={shown !== 'all'}
          listener={listener}
          onPick={pick}
        />
      </section>
    ),
    [passages, wanted, shown, listener, pick],
  );
  const charts = useMemo(
    () =>
      meter && [
        <TurnsChart key="h" series={then} search={search} axis="horizontal" meter={meter} onPick={pick} />,
        <TurnsChart key="v" series={then} search={search} axis="vertical" meter={meter} onPick={pick} />,
        <TimeChart key="t" series={then} whole={whole} meter={meter} onPick={pick} />,
      ],
    [then, search, whole, meter, pick],
  );

  if (!setup || !meter) {
    return (
      <MessagePage title="This log is still empty">
        <p>The job is open and has no entries. New entries appear here by themselves.</p>
      </MessagePage>
    );
  }
  return (
    <main class="review">
      <header class="review-head">
        <p class="document">Ladderline, record of {RECORD_OF[setup.scope ?? 'alignment']}</p>
        <h1>
          {setup.plan && setup.plan.id !== setup.pair && `${setup.plan.id} `}
          {setup.pair} <span>{setup.site}</span>
        </h1>
      </header>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble} The record below may be out of date.
        </p>
      )}
      {fault && <Seal head={head} fault={fault} onPick={pick} />}
      <Verdict record={record} heading={heading} onPick={pick} />
      {children(pick)}
      <AcceptedHow record={record} onPick={pick} />
      <Figures record={record} meter={meter} />
      <Replay entries={entries} shown={shown} onShow={setShown} />
      {shown !== 'all' && (
        <p class="partial" role="status">
          Shown up to entry {count - 1} of {head.count - 1}. Later entries are left out below.
        </p>
      )}
      <div class="views">
        {VIEWS.map((each) => (
          <button
            key={each}
            type="button"
            class="button"
            aria-pressed={view === each}
            onClick={() => setView(each)}
          >
            {VIEW_NAME[each]}
          </button>
        ))}
      </div>
      {drawn > 0 && (
        <div class={`visit showing-${view}`}>
          {exchanged}
          <section class="charts" aria-labelledby="charts-title">
            <h2 id="charts-title">Charts</h2>
            {hasNoNumbers(setup.alone) ? <p>{NO_NUMBERS_DRAWN}</p> : charts?.slice(0, drawn - 1)}
          </section>
        </div>
      )}
      <Counters record={record} meter={meter} onPick={pick} />
      {!fault && <Seal head={head} fault={fault} onPick={pick} />}
      {saves(fileName(setup.site, setup.pair), print)}
    </main>
  );
}

/** Every printed page names its record, if the browser prints page margins. */
function usePrintedFooter({ head }: Log): void {
  useEffect(() => {
    const { style } = document.documentElement;
    style.setProperty('--record-footer', `"Job ${head.job}, ${head.count} entries, head hash ${head.hash}"`);
    return () => style.removeProperty('--record-footer');
  }, [head]);
}
