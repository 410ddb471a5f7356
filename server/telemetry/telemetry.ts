import type { Logger } from 'pino';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { Bucket, Buckets } from '../guard/allowance.ts';
import type { Span } from '../guard/span.ts';
import { Metrics } from './metrics.ts';

/** Refusals of somebody who may be guessing or crowding others out, and how loud each is said. */
const LOUD: Partial<Record<Refusal, 'warn' | 'info'>> = {
  'too-fast': 'warn',
  locked: 'info',
  'bad-code': 'info',
  'bad-token': 'info',
};

/** Where something was refused: a request, a message, a websocket or connection before either. */
type Place = 'request' | 'message' | 'websocket' | 'connection';

/** How it stands with time stamps. `behind`: signed heads after the newest; `lastAt`: of that one, ms since 1970. */
export interface StampsNow {
  readonly behind: number;
  readonly isFailing: boolean;
  readonly lastAt: number | undefined;
}

const NO_HOST = 'no host of ours';
/** Of a host in a line of the log, characters: as long as a name in the DNS may be. */
const LONGEST_NAME = 253;

/** What happens, told to those who run the server: as a line of the log, and counted. */
export class Telemetry {
  readonly metrics = new Metrics();
  /** Told of each thing that took time, once it is over. `span`: by which another process may know it. */
  onTimed: (
    name: string,
    ms: number,
    attributes: Readonly<Record<string, string | number>>,
    span?: Span,
  ) => void = () => {};
  private readonly damagedLogs = new Set<JobId>();
  /** Of each kind of refusal and block of addresses one line a minute, and sixty a minute in all: a flood fills no disk. */
  private readonly linesOf = new Buckets({ burst: 1, perSecond: 1 / 60 });
  private readonly lines = new Bucket({ burst: 60, perSecond: 1 }, performance.now());

  private stamps = (): StampsNow => ({ behind: 0, isFailing: false, lastAt: undefined });

  constructor(private readonly log: Logger) {
    this.metrics.level('stamps_failing', '1 while no time stamp can be had.', () =>
      this.stamps().isFailing ? 1 : 0,
    );
    this.metrics.level(
      'stamps_behind_heads',
      'Signed heads that no time stamp covers yet.',
      () => this.stamps().behind,
    );
    this.metrics.level(
      'stamps_last_seconds',
      'When the newest time stamp was asked for, s since 1970; 0: there is none.',
      () => (this.stamps().lastAt ?? 0) / 1000,
    );
    this.metrics.level(
      'damaged_logs',
      'Logs that were found damaged since the start, or with something lost that lies beside them.',
      () => this.damagedLogs.size,
    );
  }

  /** `block`: of addresses. */
  refused(at: Place, reason: Refusal, block: string, of?: string): void {
    this.metrics.refused(reason, at);
    const line = { at, reason, block, ...(of !== undefined && { of }) };
    const loud = LOUD[reason];
    if (!loud || !this.mayBeLoud(`${at} ${reason} ${block}`)) this.log.debug(line, 'refused');
    else this.log[loud](line, 'refused; of this network it is said once a minute');
  }

  /** A request named a host that is not ours: who runs the server may have forgotten a name. */
  misdirected(block: string, status: number, host: string | undefined): void {
    this.metrics.requests.inc({ path: NO_HOST, status: String(status) });
    this.metrics.refused('bad-message', 'request');
    const level = this.mayBeLoud(`${NO_HOST} ${block}`) ? 'info' : 'debug';
    this.log[level](
      { block, status, host: host?.slice(0, LONGEST_NAME) },
      'a request named no host of ours; names of this server are given with --name',
    );
  }

  private mayBeLoud(kind: string): boolean {
    const now = performance.now();
    return this.linesOf.of(kind, now).take(now) && this.lines.take(now);
  }

  /** A request to /api was answered. `path`: as the table of routes has it. */
  answered(method: string, path: string, status: number, ms: number, span: Span): void {
    this.metrics.requests.inc({ path, status: String(status) });
    this.metrics.requestSeconds.observe({ path }, ms / 1000);
    this.log.trace({ method, path, status, ms: rounded(ms) }, 'request');
    // The names of opentelemetry.io/docs/specs/semconv/http.
    const http = { 'http.request.method': method, 'http.route': path, 'http.response.status_code': status };
    this.onTimed(`${method} ${path}`, ms, http, span);
  }

  /** A message of a phone had its turn. */
  handled(kind: string, bytes: number, ms: number, job?: JobId): void {
    this.metrics.messages.inc({ kind });
    this.metrics.messageSeconds.observe(ms / 1000);
    this.log.trace({ kind, bytes, ms: rounded(ms), ...(job && { job }) }, 'message');
    this.onTimed(`message ${kind}`, ms, { 'ladderline.bytes': bytes });
  }

  opened(what: 'job' | 'site', log: JobId): void {
    this.metrics.opened.inc({ what });
    this.log.info({ log }, `a ${what} was opened`);
  }

  joined(job: JobId, seat: Seat): void {
    this.metrics.joins.inc({ seat });
    this.log.info({ job, seat }, 'a phone took a seat');
  }

  connected(job: JobId, role: string): void {
    this.log.debug({ job, role }, 'a phone is connected');
  }

  left(job: JobId, role: string): void {
    this.log.debug({ job, role }, 'a phone is gone');
  }

  /** Entries are in a log for good. */
  stored(log: JobId, from: Seq, count: number): void {
    this.metrics.entries.inc(count);
    this.log.debug({ log, from, count }, 'entries were written');
  }

  notStored(log: JobId, err: unknown): void {
    this.metrics.failedWrites.inc();
    this.log.error({ log, err }, 'nothing could be written to this log');
  }

  /** `read`: called whenever somebody looks. */
  watchStamps(read: () => StampsNow): void {
    this.stamps = read;
  }

  /** The head of a tree of `size` has its time stamp. */
  stamped(size: number, from: string): void {
    this.metrics.stamps.inc({ result: 'kept' });
    this.log.info({ size, from }, 'a time stamp was kept');
  }

  /** `count`: how many times in a row. */
  notStamped(from: string, count: number, err: unknown): void {
    this.metrics.stamps.inc({ result: 'failed' });
    this.log.warn({ from, count, err }, 'no time stamp could be had; it is asked for again');
  }

  worked(kind: string, waitedMs: number, tookMs: number): void {
    this.metrics.heavyWaitSeconds.observe({ kind }, waitedMs / 1000);
    this.metrics.heavySeconds.observe({ kind }, tookMs / 1000);
    this.log.debug({ kind, waitedMs: rounded(waitedMs), tookMs: rounded(tookMs) }, 'heavy work is done');
    this.onTimed(`work ${kind}`, tookMs, { 'ladderline.waited_ms': rounded(waitedMs) });
  }

  damaged(log: JobId, fault: ChainFault): void {
    this.damagedLogs.add(log);
    this.log.error({ log, fault }, 'this log fails its check');
  }

  /** What should lie beside these entries. */
  lost(log: JobId, lost: readonly Seq[]): void {
    this.damagedLogs.add(log);
    this.log.error({ log, lost }, 'pictures of this log are lost, or others than they were');
  }
}

const rounded = (ms: number): number => Math.round(ms * 10) / 10;
