import { describe, expect, it } from 'vitest';
import { jobPdf, PICTURES_MOST } from '../../server/report/make.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import { NO_PICTURE, PICTURES_LEFT_OUT } from '../../src/phrases/photos.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { pairPage } from '../../src/report/pair-page.ts';
import { photosIn, withoutPictures } from '../../src/report/photos.ts';
import { playedVisit } from '../findings/site.ts';
import { picture } from '../photos/pictures.ts';
import { bare, pdfText } from './pdf-text.ts';
import { photo, visitWith } from './photographed.ts';

const file = await picture();

const first = playedVisit().length;
const drawn = async (log: CheckedLog, picture: Uint8Array | undefined) => {
  const asked: number[] = [];
  const pdf = await jobPdf(log, 'UTC', 0, async (wanted) => {
    asked.push(wanted.photo);
    return picture;
  });
  return {
    asked,
    pictures: pdf.toString('latin1').match(/\/DCTDecode/g)?.length ?? 0,
    text: bare((await pdfText(pdf)).join(' ')),
  };
};

describe('the photos of a visit in its report', () => {
  const log = visitWith([
    photo('serial number'),
    photo('a mirror'),
    { type: 'photo-removed', photo: first + 1, why: 'a face in it' },
  ]);
  const { part } = pairPage({ visits: [log] }, momentsIn('UTC'));

  it('stand with what they show, when, by whom and their entry; a removed one with its reason', () => {
    expect(photosIn(part).map(({ caption }) => caption)).toEqual([
      expect.stringMatching(new RegExp(`^Label: serial number\\. .+, panel, #${first}$`)),
    ]);
    const block = part.blocks.find(({ kind }) => kind === 'photos');
    expect(block).toMatchObject({ gone: [`Label: a mirror: removed (a face in it), #${first + 2}`] });
  });

  it('are in the PDF, or their frame says that the picture is lost', async () => {
    const there = await drawn(log, file);
    expect(there).toMatchObject({ asked: [first], pictures: 1 });
    expect(there.text).not.toContain(bare(NO_PICTURE));
    const lost = await drawn(log, undefined);
    expect(lost.pictures).toBe(0);
    expect(lost.text).toContain(bare(NO_PICTURE));
  });

  it.each([
    { bytes: PICTURES_MOST, left: 'in' },
    { bytes: PICTURES_MOST + 1, left: 'out' },
  ])('are left $left of a PDF that has $bytes bytes of them', async ({ bytes, left }) => {
    const { pictures, text } = await drawn(visitWith([photo('one', bytes - 1), photo('two', 1)]), file);
    expect(pictures).toBe(left === 'in' ? 2 : 0);
    expect(text.includes(bare(PICTURES_LEFT_OUT))).toBe(left === 'out');
    expect(text).toContain(bare('Label: one'));
  });

  it('leave a part without photos as it is', () => {
    const { part: bare } = pairPage({ visits: [visitWith([])] }, momentsIn('UTC'));
    expect(withoutPictures(bare)).toEqual(bare);
  });
});
