import { findFault, headAfter } from '../../src/log/chain.ts';
import type { Entry, Log } from '../../src/model/entry.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';

/** A log with what is worked out from it. */
export interface Known {
  log: Log;
  record: VisitRecord;
}

/** What is worked out from a log. Of one that only grew, only the new entries are folded and checked. */
export function recordOf(log: Log, last?: Known): Known {
  const { entries, head } = log;
  const before = last?.log.entries.every((entry, seq) => entry === entries[seq]) ? last : undefined;
  const fault = findFault(entries, head, before && !before.record.fault ? before.log.head : undefined);
  const state = entries.slice(before?.log.entries.length).reduce(fold, before?.record.state ?? EMPTY);
  return { log, record: new VisitRecord(log, { state, fault }) };
}

/** The log with the entries that came after it. */
export function extended(log: Log, more: readonly Entry[]): Log {
  const last = more.at(-1);
  return last ? { entries: [...log.entries, ...more], head: headAfter(last) } : log;
}
