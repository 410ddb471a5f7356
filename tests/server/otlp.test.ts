import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, it, onTestFinished } from 'vitest';
import { serve } from './house.ts';
import { bothIn, get } from './phone.ts';

/** A collector as opentelemetry.io/docs/specs/otlp has it: POST of JSON to /v1/metrics and /v1/traces, answered with 200 and {}. */
async function collector() {
  const got = new Map<string, unknown[]>();
  const server = createServer(async (request, response) => {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    const path = `${request.method} ${request.url} ${request.headers['content-type']}`;
    got.set(path, [...(got.get(path) ?? []), JSON.parse(Buffer.concat(parts).toString())]);
    response.setHeader('content-type', 'application/json').end('{}');
  });
  await once(server.listen(0, '127.0.0.1'), 'listening');
  onTestFinished(() => void server.close());
  return { got, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}

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

  const traces = got.get(`POST /v1/traces ${json}`) as {
    resourceSpans: {
      scopeSpans: { spans: { name: string; startTimeUnixNano: string; endTimeUnixNano: string }[] }[];
    }[];
  }[];
  const spans = traces.flatMap(({ resourceSpans }) =>
    resourceSpans.flatMap(({ scopeSpans }) => scopeSpans.flatMap((scope) => scope.spans)),
  );
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
