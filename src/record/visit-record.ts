import { reviewVisit } from '../findings/review.ts';
import type { ChainFault } from '../log/fault.ts';
import { type Series, series } from '../log/series.ts';
import type { Log } from '../model/entry.ts';
import type { Finding } from '../model/finding.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { type FinalReading, finalReading } from '../visit/final.ts';
import { type Progress, progressOf } from '../visit/progress.ts';
import { missingForSignoff, type Unsigned } from '../visit/signoff.ts';
import { EMPTY, fold, type JobState } from '../visit/state.ts';
import { readVisit, type Visit } from '../visit/visit.ts';
import { type Overview, overviewOf } from './overview.ts';
import { statusOf } from './status.ts';

/** What is already known about a log: its state if it was folded as it grew, and how far its chain was checked. */
interface Known {
  readonly state?: JobState;
  readonly fault?: ChainFault | undefined;
}

/**
 * What follows from a visit's log. Page, board, report, verification and signature all take it from here, so
 * that no two of them can differ. Each part is computed when it is first needed, as of the log's last entry,
 * so that the same log always gives the same result.
 */
export class VisitRecord {
  readonly entries: Log['entries'];
  /** The first fault in the log's chain: then nothing in the log is certain. */
  readonly fault: ChainFault | undefined;
  /** The state at the end. */
  readonly state: JobState;
  /** Undefined for a log that opens no job. */
  readonly visit: Visit | undefined;
  #status?: PairStatus;
  #final?: FinalReading | undefined;
  #progress?: Progress;
  #missing?: readonly Unsigned[];
  #findings?: readonly Finding[];
  #overview?: Overview;
  #series?: Series;

  constructor({ entries }: Pick<Log, 'entries'>, known: Known = {}) {
    this.entries = entries;
    this.fault = known.fault;
    this.state = known.state ?? entries.reduce(fold, EMPTY);
    this.visit = readVisit(entries, this.state);
  }

  get status(): PairStatus {
    this.#status ??= statusOf(this.state, this.visit?.until ?? 0, this.fault, this.findings);
    return this.#status;
  }

  /** The last reading of the visit, and what it counts as. */
  get final(): FinalReading | undefined {
    this.#final ??= this.visit && finalReading(this.visit.commission);
    return this.#final;
  }

  /** How far the pair is proven. */
  get progress(): Progress {
    this.#progress ??= this.visit ? progressOf(this.visit.commission, this.visit.until) : NOTHING_PROVEN;
    return this.#progress;
  }

  /** What is missing for signing, in the order of the work; also empty if there is nothing to sign. */
  get missing(): readonly Unsigned[] {
    this.#missing ??= this.visit ? missingForSignoff(this.visit.commission, this.visit.until) : [];
    return this.#missing;
  }

  /** What a careful supervisor would ask. */
  get findings(): readonly Finding[] {
    this.#findings ??= this.visit ? reviewVisit(this.visit) : [];
    return this.#findings;
  }

  get overview(): Overview {
    this.#overview ??= overviewOf(this.entries, this.state);
    return this.#overview;
  }

  /** The data behind the charts. */
  get series(): Series {
    this.#series ??= series(this.entries);
    return this.#series;
  }
}

const NOTHING_PROVEN: Progress = { all: [], last: {} };
