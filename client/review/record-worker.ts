import type { Entry } from '../../src/model/entry.ts';
import type { Head } from '../../src/model/ids.ts';
import type { Heading } from '../../src/record/heading.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import type { JobState } from '../../src/visit/state.ts';
import { type Asked, callsTo } from '../browser/calls.ts';
import type { FindingLine } from './finding-lines.ts';
import type { Moment } from './moment.ts';

/** What a page shows of a record. */
export type Recorded = Pick<VisitRecord, 'fault' | 'overview' | 'series' | 'final'> & {
  readonly state: { readonly setup?: JobState['setup'] | undefined };
};

/** What is worked out from a log. Plain data: no part of it is the log itself. */
export interface Worked {
  readonly head: Head;
  readonly record: Recorded;
  readonly heading: Heading;
  readonly lines: readonly FindingLine[];
  /** Photos or sound may be kept beside it. */
  readonly hasBeside: boolean;
  /** Its end. */
  readonly moment: Moment;
}

export interface Opened extends Worked {
  readonly entries: readonly Entry[];
}

type Question =
  | { do: 'open'; token: string }
  | { do: 'grow'; entries: readonly Entry[] }
  | { do: 'moment'; count: number };
export type Ask = Asked<Question>;

/** One log, in a worker of this page. */
export interface RecordWorker {
  /** Rejects, in words, when the log cannot be read. */
  open(token: string): Promise<Opened>;
  /** With the entries that follow the last one. */
  grow(entries: readonly Entry[]): Promise<Worked>;
  /** The log after its first `count` entries. */
  moment(count: number): Promise<Moment>;
  close(): void;
}

export function openRecordWorker(): RecordWorker {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const ask = callsTo<Question>(worker);
  return {
    open: (token) => ask({ do: 'open', token }),
    grow: (entries) => ask({ do: 'grow', entries }),
    moment: (count) => ask({ do: 'moment', count }),
    close: () => worker.terminate(),
  };
}
