import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { jobPdf } from '../../server/report/make.ts';
import { picture } from '../photos/pictures.ts';
import { demoReport } from './demo.ts';
import { paperOf } from './paper.ts';
import { photo, visitWith } from './photographed.ts';
import { HAS_PREFLIGHT, preflight } from './preflight.ts';

/** What PDF/A-1 (ISO 19005-1) asks for and PDF/A-2 (ISO 19005-2, 6.2.11.4.2 from memory) no longer does. */
const ONLY_IN_FIRST_PART = [/^7\.11\.2 : .*part must be 1$/, /^3\.1\.11 : .*The CIDSet entry is missing/];

/** What it finds that it should not. That the number of the part is wrong must be among what it finds: then it has looked. */
async function unexpected(file: Uint8Array): Promise<string[]> {
  const faults = await preflight(file);
  expect(faults.some((fault) => fault.startsWith('7.11.2'))).toBe(true);
  return faults.filter((fault) => !ONLY_IN_FIRST_PART.some((pattern) => pattern.test(fault)));
}

// Apache PDFBox Preflight, of Debian's libpdfbox2-java, shares no code with what wrote the file. It judges by PDF/A-1b, of
// which nearly all holds for PDF/A-2 too.
describe.skipIf(!HAS_PREFLIGHT)('a validator of files for archives', () => {
  it('finds nothing in the report but that it is of the second part of the standard', async () => {
    expect(await unexpected(await paperOf(demoReport().parts()))).toEqual([]);
  });

  it('finds nothing in one with photos either', async () => {
    const file = await picture();
    const pdf = await jobPdf(visitWith([photo('serial number')]), 'UTC', 0, async () => file);
    expect(await unexpected(pdf)).toEqual([]);
  });

  it('finds typefaces that are not in the file, and bookmarks that are not counted', async () => {
    const doc = new PDFDocument({ subset: 'PDF/A-2b', pdfVersion: '1.7', tagged: true });
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.outline.addItem('a').addItem('b');
    doc.text('set in a typeface of the reader');
    doc.end();
    await new Promise((resolve) => doc.on('end', resolve));
    const faults = await preflight(Buffer.concat(chunks));
    expect(faults.some((fault) => /^3\.1\.3 : /.test(fault))).toBe(true);
    expect(faults.some((fault) => /^1\.4\.9 : /.test(fault))).toBe(true);
  });
});
