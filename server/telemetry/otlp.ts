import { ROOT_CONTEXT, SpanKind, TraceFlags, trace } from '@opentelemetry/api';
import { OTLPMetricExporter } from '@opentelemetry/exporter-metrics-otlp-http';
import { OTLPTraceExporter } from '@opentelemetry/exporter-trace-otlp-http';
import { resourceFromAttributes } from '@opentelemetry/resources';
import { MeterProvider, PeriodicExportingMetricReader } from '@opentelemetry/sdk-metrics';
import { BasicTracerProvider, BatchSpanProcessor, RandomIdGenerator } from '@opentelemetry/sdk-trace-base';
import type { Span } from '../guard/span.ts';
import type { Exporting } from './exporting.ts';
import { producerOf } from './otlp-metrics.ts';
import type { Telemetry } from './telemetry.ts';

const METRICS_EACH_MS = 15_000;
/** Of a collector that does not answer. */
const GIVE_UP_MS = 5_000;

/**
 * Metrics and traces to a collector, by OpenTelemetry's protocol over HTTP. The metrics are those that Prometheus reads; a span is a
 * request, a message of a phone or a piece of heavy work, and names no job, person or address either. A collector that is
 * away stops nobody: what it does not take is dropped.
 */
export function exportTo(
  collector: string,
  telemetry: Telemetry,
  { version, instance }: { version: string; instance: string },
): Exporting {
  const base = collector.replace(/\/+$/, '');
  // opentelemetry.io/docs/specs/semconv/resource: what each of a service's processes says of itself.
  const resource = resourceFromAttributes({
    'service.name': 'ladderline',
    'service.version': version,
    'service.instance.id': instance,
  });
  const reader = new PeriodicExportingMetricReader({
    exporter: new OTLPMetricExporter({ url: `${base}/v1/metrics`, timeoutMillis: GIVE_UP_MS }),
    exportIntervalMillis: METRICS_EACH_MS,
    exportTimeoutMillis: GIVE_UP_MS,
    metricProducers: [producerOf(telemetry.metrics, resource)],
  });
  const meters = new MeterProvider({ resource, readers: [reader] });
  const spans = new BatchSpanProcessor(
    new OTLPTraceExporter({ url: `${base}/v1/traces`, timeoutMillis: GIVE_UP_MS }),
    { exportTimeoutMillis: GIVE_UP_MS },
  );
  // Another process was told of a span before it is over: it has the numbers then that were told.
  let told: Span | undefined;
  const random = new RandomIdGenerator();
  const idGenerator = {
    generateTraceId: () => told?.trace ?? random.generateTraceId(),
    generateSpanId: () => told?.id ?? random.generateSpanId(),
  };
  const tracers = new BasicTracerProvider({ resource, spanProcessors: [spans], idGenerator });
  const tracer = tracers.getTracer('ladderline', version);
  telemetry.onTimed = (name, ms, attributes, span) => {
    const ended = Date.now();
    told = span;
    tracer
      .startSpan(name, { kind: SpanKind.SERVER, startTime: ended - ms, attributes }, within(span))
      .end(ended);
    told = undefined;
  };
  return {
    async close() {
      telemetry.onTimed = () => {};
      await Promise.allSettled([meters.shutdown(), tracers.shutdown()]);
    },
  };
}

const within = ({ trace: traceId = '', parent: spanId }: Partial<Span> = {}) =>
  spanId === undefined
    ? ROOT_CONTEXT
    : trace.setSpanContext(ROOT_CONTEXT, { traceId, spanId, traceFlags: TraceFlags.SAMPLED, isRemote: true });
