import { expect, it } from 'vitest';
import { ReportJobs } from '../../server/report/jobs.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';

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

it('R42: six reports are kept, each for ten minutes after someone last asked for it', async () => {
  let now = 0;
  const failures: unknown[] = [];
  const jobs = new ReportJobs(
    () => now,
    (error) => failures.push(error),
  );
  const begin = () => jobs.begin('site-one-0001', 1, async () => Buffer.from('%PDF'));
  const begun = [1, 2, 3, 4, 5, 6].map(() => begin()?.report ?? '');
  expect(begin()).toBeUndefined();
  // All of them are ready.
  await new Promise((done) => setTimeout(done, 20));
  const [asked = '', left = ''] = begun;
  now = 9 * MINUTE_MS;
  expect(jobs.file('site-one-0001', asked)).toBeDefined();
  now = 11 * MINUTE_MS;
  expect(jobs.progress('site-one-0001', left)).toBe('unknown');
  expect(jobs.progress('site-one-0001', asked)).toMatchObject({ ready: true });
  expect(begin()).toBeDefined();
  expect(failures).toEqual([]);
});
