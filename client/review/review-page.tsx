import { useMemo, useState } from 'preact/hooks';
import { PRACTICE_BAND } from '../../src/phrases/practice-band.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { Exports } from './exports.tsx';
import { FindingList } from './finding-list.tsx';
import { type InWorker, useGrowing, useLog, useMoment } from './log.ts';
import { RecordView } from './record-view.tsx';
import type { Shown } from './replay.tsx';
import { WatcherRemark } from './watcher-remark.tsx';
import '../ui/practice-band.css';

/** A job's record, for people who were not there. */
export function ReviewPage({ token }: { token: string }) {
  const log = useLog(token);
  if (!log.value) return <NotYet what="log" read={log} />;
  return <Review token={token} {...log.value} />;
}

function Review({ token, ...inWorker }: InWorker & { token: string }) {
  const watched = useGrowing(token, inWorker);
  const { log, worked, trouble } = watched;
  const [shown, setShown] = useState<Shown>('all');
  const moment = useMoment(inWorker.worker, worked.moment, shown);
  const listener = useMemo(() => ({ token }), [token]);
  const { record, heading, lines } = worked;
  const shows = { log, record, heading, trouble, shown, onShow: setShown, moment };
  if (record.state.setup?.practice)
    return (
      <>
        <aside class="practice-band">{PRACTICE_BAND}</aside>
        <RecordView {...shows} saves={() => null}>
          {() => null}
        </RecordView>
      </>
    );
  return (
    <RecordView
      {...shows}
      listener={listener}
      saves={(name, print) => <Exports token={token} name={name} beside={worked.hasBeside} onPrint={print} />}
    >
      {(pick) => (
        <>
          <WatcherRemark watched={watched} />
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
