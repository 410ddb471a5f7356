import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { unsigned, visitTo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

/** The supervisor at the desk: from the board to a pair's visit, and a signature drawn with the mouse. */
describe.skipIf(!CHROMIUM)('a supervisor signs', () => {
  const { job } = visitTo('N2');
  let site: AtDesk;
  let desk: Page;

  beforeAll(async () => {
    site = await atDesk(unsigned('N2'));
    desk = site.desk;
  }, 60_000);
  afterAll(() => site?.leave());

  it('finds the pair on the board, proven and not signed', async () => {
    await desk.getByRole('link', { name: /North aisle 2.*Proven/ }).click();
    await desk.getByRole('heading', { name: 'Signature' }).waitFor();
  });

  it('is asked for a signature before anything is logged', async () => {
    await desk.getByLabel('Name').fill('S. Example');
    await desk.getByLabel('Role').fill('Supervisor');
    await press(desk, 'Sign the record');
    await desk.getByText('Sign in the box.').waitFor();
  });

  it('draws it, and the record is signed up to its head', async () => {
    const before = await site.store.head(job);
    const box = await desk.getByLabel('Box to sign in with a finger or a pen').boundingBox();
    if (!box) throw new Error('there is no box to sign in');
    await desk.mouse.move(box.x + 40, box.y + box.height / 2);
    await desk.mouse.down();
    await desk.mouse.move(box.x + 120, box.y + box.height / 3, { steps: 6 });
    await desk.mouse.move(box.x + 220, box.y + box.height / 1.6, { steps: 6 });
    await desk.mouse.up();
    await press(desk, 'Sign the record');
    await desk.getByRole('img', { name: 'Drawn signature' }).waitFor();

    const [entry] = await site.store.read(job, before.count - 1, 1);
    expect(entry?.fact).toMatchObject({
      type: 'signed',
      name: 'S. Example',
      role: 'Supervisor',
      head: before,
      findings: ['corrections'],
      signature: { kind: 'drawn' },
    });
  });

  it('sees it signed on the board', async () => {
    await desk.goBack();
    await desk.getByRole('link', { name: /North aisle 2.*Signed by\s*S. Example/ }).waitFor();
  });
});
