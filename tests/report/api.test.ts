import { describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';
import { Desk } from '../server/desk.ts';
import { pause, serve } from '../server/house.ts';
import { get, openJob } from '../server/phone.ts';
import { demo } from './demo.ts';
import { partTexts } from './pdf-text.ts';

async function openDemo() {
  const store = new MemoryStore();
  const tokens = await layDown(store, demo);
  const { url } = await serve({ store });
  return { url, desk: new Desk(url, tokens.desk), reader: new Desk(url, tokens.watch) };
}

async function whenReady(desk: Desk, report: string): Promise<ReportProgress[]> {
  const told: ReportProgress[] = [];
  while (!told.at(-1)?.ready) {
    await pause(200);
    told.push(ReportProgress.parse(await (await desk.get(`/api/site/report?id=${report}`)).json()));
  }
  return told;
}

// A dozen logs are read and printed: on a busy machine that takes a while.
describe('the report of a site', { timeout: 120_000 }, () => {
  it('is made in the background, says how far it is, and comes as a PDF', async () => {
    const { reader } = await openDemo();
    const response = await reader.post('/api/site/report', { zone: 'Europe/London' });
    expect(response.status).toBe(202);
    const { report, total } = ReportBegun.parse(await response.json());
    expect(total).toBe(12);
    const told = await whenReady(reader, report);
    expect(told.map(({ done }) => done)).toEqual(told.map(({ done }) => done).toSorted((a, b) => a - b));
    expect(told.at(-1)).toEqual({ done: 12, total: 12, ready: true });
    const pdf = await reader.get(`/api/site/report.pdf?id=${report}`);
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(await partTexts(new Uint8Array(await pdf.arrayBuffer()))).toHaveLength(13);
  });

  it('can have only some of the pairs', async () => {
    const { desk } = await openDemo();
    const { report, total } = ReportBegun.parse(
      await (await desk.post('/api/site/report', { pairs: ['D1', 'N4'] })).json(),
    );
    expect(total).toBe(2);
    await whenReady(desk, report);
    const pdf = await desk.get(`/api/site/report.pdf?id=${report}`);
    const pages = await partTexts(new Uint8Array(await pdf.arrayBuffer()));
    expect(pages).toHaveLength(3);
    expect(pages[0]).toContain('2of12pairs');
    expect(pages[0]).not.toContain('Nothingthatonlyshows');
  });

  it('is not given to another site, and an unknown time zone is refused in words', async () => {
    const { url, desk } = await openDemo();
    const { report } = ReportBegun.parse(
      await (await desk.post('/api/site/report', { pairs: ['N1'] })).json(),
    );
    const other = (await Desk.open(url)).desk;
    expect((await other.get(`/api/site/report?id=${report}`)).status).toBe(404);
    expect((await other.get(`/api/site/report.pdf?id=${report}`)).status).toBe(404);
    const refused = await desk.post('/api/site/report', { zone: 'Nowhere/Land' });
    expect(refused.status).toBe(400);
    expect(await refused.text()).toContain('There is no such time zone');
  });
});

describe('the report of a job', () => {
  it('comes at once, to anyone with a token of the job', async () => {
    const { url } = await serve();
    const { watch } = await openJob(url);
    const pdf = await get(url, '/api/report.pdf', watch);
    expect(pdf.status).toBe(200);
    expect(await partTexts(new Uint8Array(await pdf.arrayBuffer()))).toHaveLength(1);
    expect((await get(url, '/api/report.pdf', 'A'.repeat(22))).status).toBe(401);
  });
});
