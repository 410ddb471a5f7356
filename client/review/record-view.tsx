import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { hasNoNumbers } from '../../src/model/alone.ts';
import type { Log } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import { AXES } from '../../src/model/turns.ts';
import { NO_NUMBERS_DRAWN } from '../../src/phrases/looking.ts';
import { RECORD_OF } from '../../src/phrases/visits.ts';
import type { Heading } from '../../src/record/heading.ts';
import { TimeChart } from '../charts/time-chart.tsx';
import { TurnsChart } from '../charts/turns-chart.tsx';
import '../charts/charts.css';
import { fileName } from '../ui/download.ts';
import { usePartByPart } from '../ui/in-steps.ts';
import { MessagePage } from '../ui/message-page.tsx';
import { showEntry } from './entry-links.tsx';
import { ExchangeView } from './exchange-view.tsx';
import type { Moment } from './moment.ts';
import type { Recorded } from './record-worker.ts';
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

interface RecordViewProps {
  log: Log;
  /** What is worked out from it. */
  record: Recorded;
  heading: Heading;
  /** How much of it the charts and the exchange show, and what they show; undefined while that is being worked out. */
  shown: Shown;
  onShow: (shown: Shown) => void;
  moment: Moment | undefined;
  /** Why it is not kept up to date, in words. */
  trouble: string | undefined;
  /** Who may listen to what was said; missing where nothing is kept. */
  listener?: Listener;
  /** The buttons to save or print it. */
  saves: (name: string, print: () => void) => ComponentChildren;
  /** What stands between the verdict and the figures: the findings first. */
  children: (pick: (seq: Seq) => void) => ComponentChildren;
}

/** One log: verdict, findings, figures, replay, charts and exchange; then counts, hashes and files. */
export function RecordView({
  log,
  record,
  heading,
  shown,
  onShow,
  moment,
  listener,
  trouble,
  saves,
  children,
}: RecordViewProps) {
  const { entries, head } = log;
  const { fault, state, series: whole } = record;
  const [view, setView] = useState<View>('charts');
  const [wanted, setWanted] = useState('');
  // The summary and the findings are drawn first: the exchange and the charts are long, and each is a part.
  const drawn = usePartByPart(LONG_PARTS);
  const count = shownCount(shown, entries);
  const { setup } = state;
  usePrintedFooter(log);

  const pick = useCallback(
    (seq: Seq) => {
      if (seq >= count) onShow('all');
      setWanted('');
      setView('exchange');
      // After the entry has been drawn.
      setTimeout(() => showEntry(seq));
    },
    [count, onShow],
  );
  const print = () => {
    onShow('all');
    setWanted('');
    setTimeout(() => window.print());
  };

  // While a page is open its link says something every two seconds: what is the same as before is not drawn again.
  const meter = setup?.meter;
  const exchanged = useMemo(
    () =>
      moment && (
        <section class="exchange-part" aria-labelledby="exchange-title">
          <h2 id="exchange-title">Exchange</h2>
          <ExchangeView
            passages={moment.passages}
            wanted={wanted}
            onWant={setWanted}
            follow={shown !== 'all'}
            listener={listener}
            onPick={pick}
          />
        </section>
      ),
    [moment, wanted, shown, listener, pick],
  );
  const charts = useMemo(() => {
    if (!meter || !moment) return [];
    const { series, along } = moment;
    return [
      ...AXES.map((axis) => (
        <TurnsChart key={axis} series={series} along={along[axis]} axis={axis} meter={meter} onPick={pick} />
      )),
      <TimeChart key="time" series={series} whole={whole} meter={meter} onPick={pick} />,
    ];
  }, [moment, whole, meter, pick]);

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
      <Replay entries={entries} shown={shown} onShow={onShow} />
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
      {moment && drawn > 0 && (
        <div class={`visit showing-${view}`}>
          {exchanged}
          <section class="charts" aria-labelledby="charts-title">
            <h2 id="charts-title">Charts</h2>
            {hasNoNumbers(setup.alone) ? <p>{NO_NUMBERS_DRAWN}</p> : charts.slice(0, drawn - 1)}
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
