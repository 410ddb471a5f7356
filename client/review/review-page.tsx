import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Seq } from '../../src/advice.ts';
import { series } from '../../src/log/series.ts';
import { summarize } from '../../src/log/summary.ts';
import { TimeChart } from '../charts/time-chart.tsx';
import { TurnsChart } from '../charts/turns-chart.tsx';
import '../charts/charts.css';
import { MessagePage } from '../ui/message-page.tsx';
import { showEntry } from './entry-links.tsx';
import { exchange } from './exchange.ts';
import { ExchangeView } from './exchange-view.tsx';
import { Exports, fileName } from './exports.tsx';
import { type LogRecord, useRecord } from './record.ts';
import { Replay, type Shown, shownCount } from './replay.tsx';
import { Seal } from './seal.tsx';
import { SummaryPanel } from './summary.tsx';
import './review.css';
import './print.css';

/** A job's record for somebody who was not there. */
export function ReviewPage({ token }: { token: string }) {
  const [fetched, refresh] = useRecord(token);
  if (fetched.kind === 'loading') return <p class="loading">Reading the log</p>;
  const trouble = fetched.kind === 'failed' ? fetched.text : undefined;
  if (!fetched.record) {
    return (
      <MessagePage title="The log could not be read">
        <p role="alert">{trouble}</p>
        <p>
          <button type="button" class="button main" onClick={refresh}>
            Try again
          </button>
        </p>
      </MessagePage>
    );
  }
  return <Review token={token} record={fetched.record} trouble={trouble} />;
}

function Review({
  token,
  record,
  trouble,
}: {
  token: string;
  record: LogRecord;
  trouble: string | undefined;
}) {
  const { entries, head } = record;
  const [shown, setShown] = useState<Shown>('all');
  const count = shownCount(shown, entries);
  const until = useMemo(() => entries.slice(0, count), [entries, count]);
  const summary = useMemo(() => summarize(entries), [entries]);
  const whole = useMemo(() => series(entries), [entries]);
  const then = useMemo(() => series(until), [until]);
  const { setup, from, to } = summary;
  const turns = useMemo(() => exchange(until, setup?.meter), [until, setup]);
  usePrintedFooter(record);

  const pick = (seq: Seq) => {
    if (seq >= count) setShown('all');
    // After the entry is drawn, if it had to be.
    setTimeout(() => showEntry(seq));
  };
  const print = () => {
    setShown('all');
    setTimeout(() => window.print());
  };

  if (!setup) {
    return (
      <MessagePage title="Nothing is in this log yet">
        <p>The job was opened and has no entries. This page fills by itself when the crew starts.</p>
      </MessagePage>
    );
  }
  const { meter } = setup;
  return (
    <main class="review">
      <header class="review-head">
        <p class="document">LogRecord of an alignment</p>
        <h1>
          {setup.site} <span>{setup.pair}</span>
        </h1>
        <Exports token={token} name={fileName(setup.site, setup.pair)} onPrint={print} />
      </header>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble} What is shown below may be old.
        </p>
      )}
      <SummaryPanel summary={summary} series={whole} meter={meter} onPick={pick} />
      <Seal record={record} onPick={pick} />
      <Replay entries={entries} shown={shown} onShow={setShown} />
      {shown !== 'all' && (
        <p class="partial" role="status">
          Shown up to entry {count - 1} of {head.count - 1}: what follows is left out below.
        </p>
      )}
      <div class="story">
        <section aria-labelledby="exchange-title">
          <h2 id="exchange-title">Exchange</h2>
          <ExchangeView turns={turns} onPick={pick} />
        </section>
        <section class="charts" aria-labelledby="charts-title">
          <h2 id="charts-title">Charts</h2>
          <TurnsChart series={then} axis="horizontal" meter={meter} onPick={pick} />
          <TurnsChart series={then} axis="vertical" meter={meter} onPick={pick} />
          <TimeChart series={then} meter={meter} from={from ?? 0} to={to ?? 0} onPick={pick} />
        </section>
      </div>
    </main>
  );
}

/** Every printed page says which record it belongs to, where the browser prints page margins. */
function usePrintedFooter({ head }: LogRecord): void {
  useEffect(() => {
    const { style } = document.documentElement;
    style.setProperty('--record-footer', `"Job ${head.job}, ${head.count} entries, head hash ${head.hash}"`);
    return () => style.removeProperty('--record-footer');
  }, [head]);
}
