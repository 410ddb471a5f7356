import { expect, it } from 'vitest';
import { Turns } from '../../server/guard/turns.ts';
import { ReportJobs } from '../../server/report/jobs.ts';
import { ServerKey } from '../../src/protocol/heads.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';
import { bare, pdfText } from '../report/pdf-text.ts';
import { Desk } from './desk.ts';
import { pause, serve } from './house.ts';
import { get, openJob } from './phone.ts';

it('R42: the printed reports of job and site hold the key of the server, as it gives it itself', async () => {
  const { url } = await serve();
  const { fingerprint } = ServerKey.parse(await (await get(url, '/api/key')).json());
  const { token } = await openJob(url);
  const read = async (response: Response) =>
    (await pdfText(Buffer.from(await response.arrayBuffer()))).join('');
  expect(await read(await get(url, '/api/report.pdf', token))).toContain(
    bare(`Key of the server ${fingerprint}`),
  );
  const { desk } = await Desk.open(url);
  await desk.post('/api/site/pairs', { pairs: [{ id: 'A', name: 'Pair A' }] });
  const { report } = ReportBegun.parse(await (await desk.post('/api/site/report', {})).json());
  const ready = async () =>
    ReportProgress.parse(await (await desk.get(`/api/site/report?id=${report}`)).json()).ready;
  while (!(await ready())) await pause(50);
  const cover = await read(await desk.get(`/api/site/report.pdf?id=${report}`));
  expect(cover).toContain(bare(`Key of the server ${fingerprint}`));
}, 60_000);

const MINUTE_MS = 60_000;

it('R42: both tokens of a site can ask for its report; another site cannot see it', async () => {
  const { url } = await serve();
  const [one, other] = [await Desk.open(url), await Desk.open(url, 'Another hall')];
  await one.desk.post('/api/site/pairs', { pairs: [{ id: 'A', name: 'Pair A' }] });
  for (const who of [one.desk, one.reader]) {
    const { report, total } = ReportBegun.parse(await (await who.post('/api/site/report', {})).json());
    expect(total).toBe(1);
    expect((await other.desk.get(`/api/site/report?id=${report}`)).status).toBe(404);
    const progress = await (await who.get(`/api/site/report?id=${report}`)).json();
    expect(ReportProgress.parse(progress).total).toBe(1);
  }
  const stranger = await new Desk(url, 'A'.repeat(22)).post('/api/site/report', {});
  expect(HttpRefusal.parse(await stranger.json()).reason).toBe('bad-token');
});

const LIMITS = { atOnce: 1, perKey: 2, perPlace: 4, all: 6 };

function newJobs(now: () => number) {
  const failures: unknown[] = [];
  const jobs = new ReportJobs(new Turns(LIMITS), LIMITS, now, (error) => failures.push(error));
  const begin = (site: string, place: string) =>
    jobs.begin(site, place, 1, async () => Buffer.from('%PDF'))?.report;
  return { jobs, begin, failures };
}

it('R42: so many reports of a site, of a block of addresses and of all are kept; then one gives way that is ready', async () => {
  let now = 0;
  const { jobs, begin } = newJobs(() => now);
  expect([begin('one', 'a'), begin('one', 'b'), begin('one', 'c')].map(Boolean)).toEqual([true, true, false]);
  expect(
    [begin('two', 'a'), begin('two', 'a'), begin('three', 'a'), begin('four', 'a')].map(Boolean),
  ).toEqual([true, true, true, false]);
  const [sixth, none] = [begin('five', 'd'), begin('six', 'e')];
  expect([Boolean(sixth), none]).toEqual([true, undefined]);
  await new Promise((done) => setTimeout(done, 20));
  now = 1_000;
  expect(jobs.file('five', sixth as string)).toBeDefined();
  const late = begin('six', 'e');
  expect(late).toBeDefined();
  expect(begin('one', 'e')).toBeDefined();
  expect(jobs.file('five', sixth as string)).toBeDefined();
});

it('R42: a report is kept for ten minutes after someone last asked for it', async () => {
  let now = 0;
  const { jobs, begin, failures } = newJobs(() => now);
  const site = 'site-one-0001';
  const begun = [begin(site, 'a'), begin(site, 'b')];
  // Both are ready.
  await new Promise((done) => setTimeout(done, 20));
  const [asked = '', left = ''] = begun;
  now = 9 * MINUTE_MS;
  expect(jobs.file('site-one-0001', asked)).toBeDefined();
  now = 11 * MINUTE_MS;
  expect(jobs.progress('site-one-0001', left)).toBe('unknown');
  expect(jobs.progress('site-one-0001', asked)).toMatchObject({ ready: true });
  expect(begin(site, 'a')).toBeDefined();
  expect(failures).toEqual([]);
});
