import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { readJpeg } from '../../src/formats/jpeg.ts';
import { readArchive } from '../../src/log/archive.ts';
import { isEnclosed } from '../../src/log/enclosure.ts';
import { checkPhotos } from '../../src/verify/photos.ts';
import { kept, type Photo } from '../../src/visit/photos.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { tokenOf, unsigned, visitTo } from '../server/played-site.ts';
import { verified } from '../verify/checked.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

const { job } = visitTo('S3');

/** A picture larger than a record takes, drawn by the browser: a label on a wall of many colours. */
const drawn = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 2400;
    canvas.height = 1800;
    const pen = canvas.getContext('2d') as CanvasRenderingContext2D;
    for (let i = 0; i < 6_000; i += 1) {
      pen.fillStyle = `hsl(${(i * 47) % 360} 40% ${30 + ((i * 13) % 50)}%)`;
      pen.fillRect((i * 197) % 2400, (i * 131) % 1800, 60, 45);
    }
    pen.fillStyle = 'white';
    pen.fillRect(600, 600, 1200, 500);
    pen.fillStyle = 'black';
    pen.font = '120px sans-serif';
    pen.fillText('Serial R-0012', 720, 880);
    return canvas.toDataURL('image/png').split(',')[1] as string;
  });

describe.skipIf(!CHROMIUM)('photos of a visit', () => {
  let site: AtDesk;
  let panel: Page;
  let file: { name: string; mimeType: string; buffer: Buffer };

  const photos = async (): Promise<readonly Photo[]> =>
    (await site.store.read(job, -1, 10_000)).reduce(fold, EMPTY).photos;
  const picture = async (page: Page, name: string) => {
    if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/${name}.png` });
  };
  const fits = async () =>
    expect(await panel.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
  const openSheet = async () => {
    await press(panel, 'Menu');
    await panel.getByRole('button', { name: /^Photos/ }).click();
    await panel.getByLabel('Take a photo').waitFor({ state: 'attached' });
  };
  const take = async (of: string, caption: string) => {
    await panel.getByLabel('Take a photo').setInputFiles(file);
    await press(panel, of);
    await panel.getByLabel('In your words, if you like').fill(caption);
    await picture(panel, 'photo-new');
    await press(panel, 'Keep it for the record');
  };

  beforeAll(async () => {
    site = await atDesk(unsigned('S3'));
    const saved = { seat: 'panel', job, token: await tokenOf(site.store, job, 'panel') };
    panel = await site.browser.newPage({ viewport: { width: 390, height: 844 } });
    await panel.addInitScript(
      ([text, cautions]) => {
        localStorage.setItem('ladderline.seat.panel', text as string);
        localStorage.setItem(cautions as string, 'true');
      },
      [JSON.stringify(saved), `ladderline.cautions.${job}.panel`],
    );
    await panel.goto(`${site.server.url}/panel`);
    file = { name: 'label.png', mimeType: 'image/png', buffer: Buffer.from(await drawn(panel), 'base64') };
  }, 60_000);
  afterAll(() => site?.leave());

  it('are made small, kept beside the log and named in it', async () => {
    await openSheet();
    await picture(panel, 'photos-none');
    await take('Label', 'serial number of the receiver');
    await panel.locator('.photos img').waitFor();
    await fits();
    await picture(panel, 'photos-one');
    const [photo] = await photos();
    expect(photo).toMatchObject({ shows: 'label', caption: 'serial number of the receiver', by: 'panel' });
    const enclosure = await site.store.enclosure(job, photo?.seq ?? -1);
    expect(enclosure && isEnclosed(enclosure, photo?.hash ?? '')).toBe(true);
    expect(readJpeg(enclosure?.content ?? new Uint8Array())).toMatchObject({ kind: 'picture', width: 1600 });
    expect(photo?.bytes).toBeLessThanOrEqual(400_000);
  });

  it('wait on the phone while there is no link, through a reload too', async () => {
    await panel.route('**/api/photo?id=*', (route) => route.abort());
    await take('Emitter', 'on its bracket');
    await panel.getByText('Not sent yet. It goes when the link is back.').waitFor();
    await fits();
    await picture(panel, 'photos-waiting');
    await panel.reload();
    await openSheet();
    await panel.getByText('Not sent yet. It goes when the link is back.').waitFor();
    expect(await photos()).toHaveLength(1);
    await panel.unroute('**/api/photo?id=*');
    await vi.waitFor(async () => expect(await photos()).toHaveLength(2), 20_000);
    await panel.getByText('Not sent yet. It goes when the link is back.').waitFor({ state: 'detached' });
  });

  it('are removed with a reason, and the record keeps that they were', async () => {
    const [first] = await photos();
    await panel.locator('.photo', { hasText: 'serial number' }).getByText('Remove this photo').click();
    await panel.getByLabel('Why is it removed?').fill('a face in the mirror');
    await picture(panel, 'photo-removal');
    await panel.locator('.photo-removal').getByRole('button', { name: 'Remove this photo' }).click();
    await panel.getByText(/removed \(a face in the mirror\)/).waitFor();
    expect(await site.store.enclosure(job, first?.seq ?? -1)).toBeUndefined();
    expect(kept(await photos())).toHaveLength(1);
  });

  it('are seen and added at the desk, and stand in the report', async () => {
    const { desk, keys, server } = site;
    await desk.goto(`${server.url}/site/pair#${keys.desk}/${job}`);
    await desk.locator('.visit-photos img').waitFor();
    await desk.getByText('Add a photo').click();
    await desk.locator('.visit-photos').getByLabel('Choose a picture on this phone').setInputFiles(file);
    await press(desk, 'Panel');
    await press(desk, 'Keep it for the record');
    await vi.waitFor(async () => expect(kept(await photos())).toHaveLength(2), 20_000);
    await desk.locator('.visit-photos img').nth(1).waitFor();
    await desk.locator('.visit-photos').scrollIntoViewIfNeeded();
    await picture(desk, 'photos-desk');
    await desk.goto(`${server.url}/report#${keys.desk}/${job}`);
    await desk.locator('.sheet-photos img').nth(1).waitFor();
    await desk.locator('.sheet-photos').scrollIntoViewIfNeeded();
    await picture(desk, 'photos-report');
    const token = await tokenOf(site.store, job, 'emitter');
    const pdf = await fetch(`${server.url}/api/report.pdf`, {
      headers: { authorization: `Bearer ${token}` },
    });
    const paper = Buffer.from(await pdf.arrayBuffer());
    expect(paper.toString('latin1').match(/\/DCTDecode/g)).toHaveLength(2);
    if (process.env.PICTURES) {
      await import('node:fs/promises').then((fs) =>
        fs.writeFile(`${process.env.PICTURES}/report.pdf`, paper),
      );
    }
  });

  it('are saved with the record in one file, which verifies with every picture', async () => {
    const { desk, keys, server } = site;
    await desk.goto(`${server.url}/site/pair#${keys.desk}/${job}`);
    const zip = desk.getByRole('button', { name: 'Save as ZIP with photos' });
    await zip.scrollIntoViewIfNeeded();
    await picture(desk, 'photos-save');
    const download = desk.waitForEvent('download');
    await zip.click();
    const archive = readArchive(new Uint8Array(await readFile(await (await download).path())));
    const result = verified(archive?.log ?? '');
    if (!result.ok || !archive) throw new Error('the file does not verify');
    expect([kept(result.photos).length, archive.photos.size]).toEqual([2, 2]);
    expect(checkPhotos(result.photos, archive)).toEqual([]);
    // With what the server signed of it.
    expect(result.signed.kind).toBe('nobodys');
  });

  it('are not offered to be saved where there are none', async () => {
    const { desk, keys, server } = site;
    const other = visitTo('N2').job;
    await desk.goto(`${server.url}/site/pair#${keys.desk}/${other}`);
    await desk.getByRole('button', { name: 'Save as CSV' }).waitFor();
    expect(await desk.getByRole('button', { name: 'Save as ZIP with photos' }).count()).toBe(0);
  });
});
