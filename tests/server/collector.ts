import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { onTestFinished } from 'vitest';

/** A collector as opentelemetry.io/docs/specs/otlp has it: POST of JSON to /v1/metrics and /v1/traces, answered with 200 and {}. */
export async function collector() {
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

/** As opentelemetry-proto, trace.proto, has it in JSON. */
interface Span {
  name: string;
  traceId: string;
  spanId: string;
  parentSpanId?: string;
  startTimeUnixNano: string;
  endTimeUnixNano: string;
}

/** All spans that came. */
export function spansIn(got: ReadonlyMap<string, unknown[]>): Span[] {
  const traces = (got.get('POST /v1/traces application/json') ?? []) as {
    resourceSpans: { scopeSpans: { spans: Span[] }[] }[];
  }[];
  return traces.flatMap(({ resourceSpans }) =>
    resourceSpans.flatMap(({ scopeSpans }) => scopeSpans.flatMap(({ spans }) => spans)),
  );
}
