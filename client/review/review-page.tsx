import { useMemo } from 'preact/hooks';
import { PRACTICE_BAND } from '../../src/phrases/practice-band.ts';
import { headingOf } from '../../src/record/heading.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { Exports, hasBeside } from './exports.tsx';
import { FindingList, linesOf } from './finding-list.tsx';
import { type Known, useGrowing, useLog } from './log.ts';
import { RecordView } from './record-view.tsx';
import { WatcherRemark } from './watcher-remark.tsx';
import '../ui/practice-band.css';

/** A job's record, for people who were not there. */
export function ReviewPage({ token }: { token: string }) {
  const log = useLog(token);
  if (!log.value) return <NotYet what="log" read={log} />;
  return <Review token={token} known={log.value} />;
}

function Review({ token, known }: { token: string; known: Known }) {
  const grown = useGrowing(token, known);
  const { record } = grown;
  const lines = useMemo(() => linesOf(record), [record]);
  const listener = useMemo(() => ({ token }), [token]);
  if (record.state.setup?.practice)
    return (
      <>
        <aside class="practice-band">{PRACTICE_BAND}</aside>
        <RecordView {...grown} heading={headingOf(record, undefined)} saves={() => null}>
          {() => null}
        </RecordView>
      </>
    );
  return (
    <RecordView
      {...grown}
      // A job's own link shows nothing of a site.
      heading={headingOf(record, [])}
      listener={listener}
      saves={(name, print) => (
        <Exports token={token} name={name} beside={hasBeside(record.state)} onPrint={print} />
      )}
    >
      {(pick) => (
        <>
          <WatcherRemark watched={grown} />
          <section class="findings-part" aria-labelledby="findings-title">
            <h2 id="findings-title">Findings</h2>
            {lines.length === 0 && <p>No findings in this record.</p>}
            <FindingList lines={lines} onPick={pick} />
          </section>
        </>
      )}
    </RecordView>
  );
}
