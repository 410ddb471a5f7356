import type { Log } from '../../src/model/entry.ts';
import { NotYet } from '../ui/not-yet.tsx';
import { Exports } from './exports.tsx';
import { useGrowing, useLog } from './log.ts';
import { RecordView } from './record-view.tsx';

/** A job's record, for people who were not there. */
export function ReviewPage({ token }: { token: string }) {
  const log = useLog(token);
  if (!log.value) return <NotYet what="log" read={log} />;
  return <Review token={token} fetched={log.value} />;
}

function Review({ token, fetched }: { token: string; fetched: Log }) {
  const grown = useGrowing(token, fetched);
  return (
    <RecordView {...grown} saves={(name, print) => <Exports token={token} name={name} onPrint={print} />} />
  );
}
