import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Refusal } from '../../src/model/refusal.ts';

/** From one millisecond to half a minute, s. */
const BUCKETS_S = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

/** How something stands at the moment it is asked for, under one label or none. */
export type Level = () => number | Iterable<readonly [label: string, value: number]>;

/** One metric with all of its values. */
export interface Measured {
  readonly name: string;
  readonly help: string;
  readonly type: string;
  readonly values: readonly {
    readonly value: number;
    readonly labels: Readonly<Record<string, string | number>>;
    /** Of a histogram: which of its series. */
    readonly metricName?: string;
  }[];
}

/**
 * What Prometheus reads (its text format, version 0.0.4). Labels are few and known beforehand: no job, person or address
 * is ever one.
 */
export class Metrics {
  private readonly registry = new Registry();

  readonly messages = this.counter('messages_total', 'Messages of phones that had their turn.', ['kind']);
  readonly messageSeconds = this.histogram(
    'message_seconds',
    'From the arrival of a message until it was answered; what goes into a log was durable by then.',
  );
  readonly requests = this.counter('requests_total', 'Requests to /api that were answered.', [
    'path',
    'status',
  ]);
  readonly requestSeconds = this.histogram('request_seconds', 'How long requests to /api took.', ['path']);
  readonly refusals = this.counter('refusals_total', 'What was refused, by its reason and by where.', [
    'reason',
    'at',
  ]);
  readonly joins = this.counter('joins_total', 'Seats that were taken with a code.', ['seat']);
  readonly opened = this.counter('opened_total', 'Jobs and sites that were opened.', ['what']);
  readonly entries = this.counter('entries_total', 'Entries that were written to logs.');
  readonly failedWrites = this.counter('failed_writes_total', 'Times when a log could not be written.');
  readonly stamps = this.counter('stamps_total', 'Time stamps that were asked for.', ['result']);
  readonly heavySeconds = this.histogram('heavy_seconds', 'How long heavy work took, once it had its turn.', [
    'kind',
  ]);
  readonly heavyWaitSeconds = this.histogram(
    'heavy_wait_seconds',
    'How long heavy work waited for its turn.',
    ['kind'],
  );

  /** `read`: called whenever somebody looks. */
  level(name: string, help: string, read: Level | (() => Promise<number>), label?: string): void {
    new Gauge({
      name: PREFIX + name,
      help,
      registers: [this.registry],
      labelNames: label === undefined ? [] : [label],
      async collect() {
        const now = await read();
        if (typeof now === 'number') this.set(now);
        else for (const [of, value] of now) this.set({ [label ?? 'of']: of }, value);
      },
    });
  }

  /** Memory, processor time, the lag of the event loop and the like, as every program on Node.js has them. */
  ofProcess(): void {
    collectDefaultMetrics({ register: this.registry });
  }

  refused(reason: Refusal, at: string): void {
    this.refusals.inc({ reason, at });
  }

  get type(): string {
    return this.registry.contentType;
  }

  text(): Promise<string> {
    return this.registry.metrics();
  }

  /** The same, as data. Its types say that kinds are numbers; they are words. */
  measured(): Promise<Measured[]> {
    return this.registry.getMetricsAsJSON() as Promise<unknown> as Promise<Measured[]>;
  }

  private counter<L extends string>(name: string, help: string, labelNames: L[] = []): Counter<L> {
    return new Counter({ name: PREFIX + name, help, labelNames, registers: [this.registry] });
  }

  private histogram<L extends string>(name: string, help: string, labelNames: L[] = []): Histogram<L> {
    return new Histogram({
      name: PREFIX + name,
      help,
      labelNames,
      buckets: BUCKETS_S,
      registers: [this.registry],
    });
  }
}

const PREFIX = 'ladderline_';
