import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { Desk } from '../server/desk.ts';
import { demo, visitTo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

const HOW = 'Late by the verification delay of the panel, see its configuration';
const { job, entries } = visitTo('S4');

/** The visit in which only two things are left: nobody has answered for its failed test, and nobody has signed. */
function unanswered(): Entry[] {
  let head = emptyHead(job);
  const end = entries.findIndex(({ fact }) => fact.type === 'signed');
  return entries.slice(0, end).map(({ at, actor, fact }) => {
    // Replaces the answer, so that every other entry keeps its number.
    const said: Entry['fact'] = { type: 'remark', seat: 'panel', text: 'The office will look into that' };
    const entry = seal(head, { actor, fact: fact.type === 'issue-closed' ? said : fact }, at);
    head = headAfter(entry);
    return entry;
  });
}

describe.skipIf(!CHROMIUM)('a test that failed and was left open', () => {
  let site: AtDesk;
  let desk: Page;

  beforeAll(async () => {
    const visits = demo.visits.map((visit) => (visit.job === job ? { job, entries: unanswered() } : visit));
    site = await atDesk({ site: demo.site, visits });
    desk = site.desk;
  }, 60_000);
  afterAll(() => site?.leave());

  it('needs attention on the board, and leads to what is missing', async () => {
    await desk.getByRole('link', { name: /South aisle 4.*Needs attention/ }).click();
    await desk.getByText('It cannot be signed yet. Missing:').waitFor();
    expect(await desk.locator('.missing-list li').allTextContents()).toEqual([
      'the alarm test, passed',
      expect.stringMatching(/^an answer to the open issue: Alarm test failed/),
    ]);
  });

  it('cannot be signed while it is open, neither on the page nor without the page', async () => {
    expect(await desk.getByRole('button', { name: 'Sign the record' }).count()).toBe(0);
    const { count, hash } = await site.store.head(job);
    const signature = { kind: 'typed', text: 'S. Example' };
    const command = { job, name: 'S. Example', role: 'Supervisor', signature, head: { count, hash } };
    const answer = await new Desk(site.server.url, site.keys.desk).post('/api/site/sign', command);
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({ reason: 'not-signable' });
    expect(await site.store.head(job)).toEqual({ job, count, hash });
  });

  it('is answered by the desk: a person with the read-only link can only see it', async () => {
    const reader = await site.browser.newPage();
    await reader.goto(`${site.server.url}/site/pair#${site.keys.watch}/${job}`);
    await reader.getByRole('heading', { name: 'Issues' }).waitFor();
    expect(await reader.getByLabel('How it was settled').count()).toBe(0);
    await reader.close();
  });

  it('is closed with words that say why, which stay in the record', async () => {
    const close = desk.getByRole('button', { name: 'Close it with these words' });
    expect(await close.isDisabled()).toBe(true);
    await desk.getByLabel('How it was settled').fill(HOW);
    await close.click();
    await desk.getByText(HOW).first().waitFor();
    const [closing] = await site.store.read(job, unanswered().length - 1, 1);
    expect(closing).toMatchObject({ actor: 'supervisor', fact: { type: 'issue-closed', how: HOW } });
  });

  it('can then be signed, and the finding stays with the signature', async () => {
    await desk.getByLabel('Name').fill('S. Example');
    await desk.getByLabel('Role').fill('Supervisor');
    await press(desk, 'Type');
    await desk.getByLabel('Signature, typed').fill('S. Example');
    await press(desk, 'Sign the record');
    await desk.locator('.signature.typed').waitFor();
    const signed = (await site.store.read(job, -1, 1_000)).filter(({ fact }) => fact.type === 'signed');
    expect(signed).toMatchObject([{ fact: { findings: ['unproven', 'test-failed'] } }]);
  });
});
