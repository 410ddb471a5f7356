import { expect, it } from 'vitest';
import { collector, spansIn } from './collector.ts';
import { serve } from './house.ts';
import { bothIn, get } from './phone.ts';

interface Point {
  attributes: { key: string; value: { stringValue?: string } }[];
  asDouble?: number;
  count?: number;
  sum?: number;
  bucketCounts?: number[];
  explicitBounds?: number[];
}

interface Metric {
  name: string;
  unit: string;
  sum?: { isMonotonic: boolean; aggregationTemporality: number; dataPoints: Point[] };
  gauge?: { dataPoints: Point[] };
  histogram?: { aggregationTemporality: number; dataPoints: Point[] };
}

it('a collector gets the metrics that Prometheus reads and a span for each request and message, and no name of a job', async () => {
  const { got, url: to } = await collector();
  const server = await serve({ otlp: `${to}/`, metricsToken: 'metrics-token' });
  const { job, panel } = await bothIn(server.url);
  for (const text of ['one', 'two', 'three']) await panel.ack(panel.remark(text));
  const prometheus = await (await get(server.url, '/api/metrics', 'metrics-token')).text();
  await server.close();

  const json = 'application/json';
  const metrics = got.get(`POST /v1/metrics ${json}`)?.at(-1) as {
    resourceMetrics: { resource: { attributes: unknown[] }; scopeMetrics: { metrics: Metric[] }[] }[];
  };
  const [{ resource, scopeMetrics } = { resource: undefined, scopeMetrics: [] }] = metrics.resourceMetrics;
  expect(resource?.attributes).toContainEqual({ key: 'service.name', value: { stringValue: 'ladderline' } });
  const all = scopeMetrics.flatMap((scope) => scope.metrics);
  const named = (name: string) => all.find((metric) => metric.name === name);
  for (const [, name = ''] of prometheus.matchAll(/^# TYPE (\S+) (?:counter|gauge|histogram)$/gm))
    expect(named(name)?.name, name).toBe(name);
  const messages = named('ladderline_messages_total')?.sum;
  // opentelemetry-proto, metrics.proto: AGGREGATION_TEMPORALITY_CUMULATIVE = 2.
  expect(messages).toMatchObject({ isMonotonic: true, aggregationTemporality: 2 });
  const remarks = messages?.dataPoints.find(
    ({ attributes }) => attributes[0]?.value.stringValue === 'remark',
  );
  expect(remarks?.asDouble).toBe(3);
  const [times] = named('ladderline_message_seconds')?.histogram?.dataPoints ?? [];
  expect(times?.bucketCounts).toHaveLength((times?.explicitBounds?.length ?? 0) + 1);
  expect(times?.bucketCounts?.reduce((sum, each) => sum + each, 0)).toBe(times?.count);
  expect(named('ladderline_message_seconds')?.unit).toBe('s');

  const spans = spansIn(got);
  expect(spans.filter(({ name }) => name === 'message remark')).toHaveLength(3);
  expect(spans.map(({ name }) => name)).toContain('POST /api/jobs');
  for (const { startTimeUnixNano: from, endTimeUnixNano: until } of spans)
    expect(BigInt(until) >= BigInt(from)).toBe(true);
  expect(JSON.stringify([...got.values()])).not.toContain(job.job);
});

it('a collector that is away stops neither a crew nor the end of the server', async () => {
  const { url } = await collector();
  const server = await serve({ otlp: url.replace(/\d+$/, '9') });
  const { panel } = await bothIn(server.url);
  expect(await panel.ack(panel.remark('one'))).toBeGreaterThan(0);
  await server.close();
});
