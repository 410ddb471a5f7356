import { type Attributes, type HrTime, ValueType } from '@opentelemetry/api';
import type { Resource } from '@opentelemetry/resources';
import {
  AggregationTemporality,
  DataPointType,
  type HistogramMetricData,
  type MetricData,
  type MetricProducer,
} from '@opentelemetry/sdk-metrics';
import type { Measured, Metrics } from './metrics.ts';

const hrTime = (ms: number): HrTime => [Math.floor(ms / 1000), Math.round((ms % 1000) * 1e6)];

/** What Prometheus reads, as OpenTelemetry has it: so each thing is counted once, and both say the same. */
export function producerOf(metrics: Metrics, resource: Resource): MetricProducer {
  const began = hrTime(Date.now());
  return {
    async collect() {
      const span: Span = { startTime: began, endTime: hrTime(Date.now()) };
      const all = (await metrics.measured()).flatMap((one) => dataOf(one, span) ?? []);
      return {
        resourceMetrics: { resource, scopeMetrics: [{ scope: { name: 'ladderline' }, metrics: all }] },
        errors: [],
      };
    },
  };
}

interface Span {
  readonly startTime: HrTime;
  readonly endTime: HrTime;
}

/** Undefined of a kind that we have none of. */
function dataOf(one: Measured, span: Span): MetricData | undefined {
  const common = {
    descriptor: {
      name: one.name,
      description: one.help,
      unit: unitOf(one.name),
      valueType: ValueType.DOUBLE,
    },
    aggregationTemporality: AggregationTemporality.CUMULATIVE,
  };
  const points = one.values.map(({ labels, value }) => ({
    ...span,
    attributes: labels as Attributes,
    value,
  }));
  if (one.type === 'counter')
    return { ...common, dataPointType: DataPointType.SUM, isMonotonic: true, dataPoints: points };
  if (one.type === 'gauge') return { ...common, dataPointType: DataPointType.GAUGE, dataPoints: points };
  if (one.type === 'histogram')
    return { ...common, dataPointType: DataPointType.HISTOGRAM, dataPoints: histograms(one, span) };
  return undefined;
}

/** UCUM, as OpenTelemetry asks for. */
const unitOf = (name: string): string =>
  /_seconds(_total)?$/.test(name) ? 's' : /_bytes$/.test(name) ? 'By' : '1';

/** Prometheus counts in each bucket all that is below its bound; here each counts its own, and the last what is above them all. */
function histograms({ name, values }: Measured, span: Span): HistogramMetricData['dataPoints'] {
  const byLabels = new Map<
    string,
    { attributes: Attributes; bounds: number[]; below: number[]; sum: number; count: number }
  >();
  for (const { labels, value, metricName } of values) {
    const { le, ...attributes } = labels;
    const key = JSON.stringify(attributes);
    const point = byLabels.get(key) ?? { attributes, bounds: [], below: [], sum: 0, count: 0 };
    byLabels.set(key, point);
    if (metricName === `${name}_sum`) point.sum = value;
    else if (metricName === `${name}_count`) point.count = value;
    else if (le !== '+Inf') {
      point.bounds.push(Number(le));
      point.below.push(value);
    }
  }
  return [...byLabels.values()].map(({ attributes, bounds, below, sum, count }) => ({
    ...span,
    attributes,
    value: {
      buckets: { boundaries: bounds, counts: [...below, count].map((each, i) => each - (below[i - 1] ?? 0)) },
      sum,
      count,
    },
  }));
}
