import { describe, expect, it, vi } from 'vitest';
import { MemoryStore } from '../../server/store/memory.ts';
import { hashOf, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { HttpRefusal, JobBrought, JobRecord } from '../../src/protocol/jobs.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { serve } from './house.ts';
import { get, Phone, post, SETUP } from './phone.ts';

const TOKEN = 'KeptOnThisPhone1234567';
const OTHER_TOKEN = 'KeptOnThisPhone7654321';

function kept(job = 'on-one-phone'): LoggedJob {
  const logged = new LoggedJob(job, Date.now() - 60_000);
  logged.input({ kind: 'open', setup: { ...SETUP, alone: 'walking' } });
  logged.input({ kind: 'seated', seat: 'panel', device: 'Android phone', takeover: false });
  logged.say('panel', '142');
  logged.wait(10_000);
  return logged;
}

const bring = (url: string, entries: readonly unknown[], token = TOKEN) =>
  post(url, '/api/jobs/brought', { token, entries });

const refusal = async (response: Response) => HttpRefusal.parse(await response.json());
const brought = async (response: Response) => {
  expect(response.status).toBe(201);
  return JobBrought.parse(await response.json());
};

describe('a log that a phone has kept alone', () => {
  it('R146: is stored as it is, says that it was brought, and goes on at the server', async () => {
    const { url } = await serve();
    const { entries } = kept();
    const { job, watch } = await brought(await bring(url, entries));
    const record = JobRecord.parse(await (await get(url, '/api/record', watch)).json());
    expect(record.entries.slice(0, entries.length)).toEqual(entries);
    expect(record.entries.at(entries.length)).toMatchObject({ actor: 'server', fact: { type: 'brought' } });
    const { findings } = new VisitRecord(record);
    expect(findings.find(({ id }) => id === 'kept-by-phone')?.figures).toEqual({ count: entries.length });
    // Nobody but the phone vouches for what is before it: from here on the server does, at once.
    await vi.waitFor(async () => {
      const { proof } = JobRecord.parse(await (await get(url, '/api/record', watch)).json());
      expect(proof?.signed.at(-1)?.count).toBeGreaterThan(entries.length);
    });

    const panel = await Phone.at(url, TOKEN);
    expect(await panel.next('welcome')).toMatchObject({ role: 'panel', job });
  });

  it('R145: is refused whole when it is damaged, or holds what only a server writes', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { entries } = kept();
    const [first, ...rest] = entries as [Entry, ...Entry[]];
    const last = entries.at(-1) as Entry;
    const forged = seal(headAfter(last), { actor: 'server', fact: { type: 'brought' } }, last.at, hashOf);
    for (const wrong of [rest, [{ ...first, at: first.at + 1 }, ...rest], [...entries, forged]])
      expect(await refusal(await bring(url, wrong))).toMatchObject({ reason: 'bad-message' });
    expect(await store.jobs()).toEqual([]);
  });

  it('R147: is taken once: asked again with its token it is answered again, and with another one refused', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { entries } = kept();
    const first = await brought(await bring(url, entries));
    const panel = await Phone.at(url, TOKEN);
    await panel.ack(panel.remark('goes on'));
    const before = await store.head(first.job);

    const again = await brought(await bring(url, entries));
    expect(again.watch).not.toBe(first.watch);
    for (const watch of [first.watch, again.watch])
      expect((await get(url, '/api/record', watch)).status).toBe(200);
    expect(await refusal(await bring(url, entries, OTHER_TOKEN))).toMatchObject({ reason: 'bad-token' });

    // The same number and token, and another history.
    const other = kept();
    other.say('panel', '150');
    expect(await refusal(await bring(url, other.entries))).toMatchObject({ reason: 'bad-token' });
    expect(await store.head(first.job)).toEqual(before);
  });

  it('R148: counts as the opening of a job: where a passphrase is needed, it is needed here', async () => {
    const { url } = await serve({ passphrase: { isSet: () => true, isRight: async () => false } });
    expect(await refusal(await bring(url, kept().entries))).toMatchObject({ reason: 'locked' });
  });

  it('R148: may be as long as a long visit, and no longer', async () => {
    const { url } = await serve();
    const job = kept('a-long-visit');
    for (let i = 0; i < 300; i++)
      job.input({ kind: 'remark', seat: 'panel', text: `${i} ${'x'.repeat(300)}` });
    await brought(await bring(url, job.entries));
    const misshapen = [...job.entries.slice(0, -1), { ...job.entries.at(-1), actor: 'nobody' }];
    expect(await refusal(await bring(url, misshapen))).toMatchObject({ reason: 'bad-message' });
    const huge = await post(url, '/api/jobs/brought', { token: TOKEN, entries: ['x'.repeat(4 * 1024 ** 2)] });
    expect(await refusal(huge)).toMatchObject({ reason: 'too-long' });
  });
});
