import { useMemo, useRef } from 'preact/hooks';
import type { Log } from '../../src/model/entry.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { type Known, recordOf } from '../review/grown.ts';
import { type Moment, momentAfter, momentOf } from '../review/moment.ts';
import { type Shown, shownCount } from '../review/replay.tsx';
import { usePartByPart } from '../ui/in-steps.ts';

/** What is worked out from a log, which may grow. */
export function useVisitRecord(log: Log): VisitRecord {
  const last = useRef<Known>(undefined);
  return useMemo(() => {
    last.current = recordOf(log, last.current);
    return last.current.record;
  }, [log]);
}

/** What is shown of it. Undefined at first: the rest of the page is drawn before. */
export function useMoment(record: VisitRecord, shown: Shown): Moment | undefined {
  const drawn = usePartByPart(1);
  const count = shown === 'all' ? undefined : shownCount(shown, record.entries);
  return useMemo(() => {
    if (drawn === 0) return undefined;
    return count === undefined ? momentOf(record) : momentAfter(record.entries, count);
  }, [drawn, record, count]);
}
