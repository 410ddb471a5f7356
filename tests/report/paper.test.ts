import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { SIZE } from '../../server/report/measure.ts';
import { titleOf } from '../../src/report/report.ts';
import { demoReport } from './demo.ts';
import { paperOf } from './paper.ts';
import { openPdf, sizesIn } from './pdf-text.ts';
import { wordsOf } from './words.ts';

/** An element of the structure: `role` and children; a leaf is content with an id, or an annotation. */
interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly Node[];
}

const under = (node: Node): Node[] => [node, ...(node.children ?? []).flatMap(under)];
const pagesOf = (document: PDFDocumentProxy): Promise<PDFPageProxy[]> =>
  Promise.all(Array.from({ length: document.numPages }, (_, index) => document.getPage(index + 1)));
const treeOf = async (page: PDFPageProxy): Promise<Node> => (await page.getStructTree()) as Node;

// Read by pdf.js (pdfjs-dist), which shares no code with what wrote it. What PDF/UA-1 (ISO 14289-1) asks for is quoted from
// memory, as the Matterhorn Protocol groups it.
describe('the report on paper', async () => {
  const parts = demoReport().parts();
  const title = 'Hall <A> & "B"';
  const file = await paperOf(parts, title);
  const raw = file.toString('latin1');
  const read = <A>(reader: (pages: PDFPageProxy[], document: PDFDocumentProxy) => Promise<A>): Promise<A> =>
    openPdf(file, async (document) => reader(await pagesOf(document), document));
  const all = <A>(each: (page: PDFPageProxy) => Promise<A[]>): Promise<A[]> =>
    read(async (pages) => (await Promise.all(pages.map(each))).flat());

  it('has no letter smaller than 8 points, in charts neither', async () => {
    const sizes = await sizesIn(file);
    expect(sizes.length).toBeGreaterThan(1000);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(8 - 1e-4);
    expect(Math.min(...Object.values(SIZE))).toBe(8);
  });

  it('breaks no word', async () => {
    const known = new Set(parts.flatMap((part) => wordsOf(part).flatMap((text) => text.split(/\s+/))));
    const numbers = /^(Page|of|\d+|\(continued\)|Back|to|the|cover)$/;
    const lines = await read(async (pages) =>
      (
        await Promise.all(
          pages.map(async (page) => {
            const { items } = await page.getTextContent();
            // Runs of one line stand on one baseline; a link is a run of its own.
            const rows = new Map<string, string>();
            let last: { y: number; end: number } | undefined;
            let key = '';
            for (const item of items) {
              if (!('str' in item) || item.str === '') continue;
              const [, , , , x, y] = item.transform as number[];
              const joins = last && Math.abs(last.y - (y ?? 0)) < 0.1 && Math.abs((x ?? 0) - last.end) < 0.6;
              key = joins ? key : `${rows.size}`;
              rows.set(key, (rows.get(key) ?? '') + item.str);
              last = { y: y ?? 0, end: (x ?? 0) + item.width };
            }
            return [...rows.values()];
          }),
        )
      ).flat(),
    );
    const strange = lines
      .flatMap((line) => line.trim().split(/\s+/))
      .filter((word) => word !== '' && !known.has(word) && !numbers.test(word));
    expect(lines.length).toBeGreaterThan(1000);
    expect(strange).toEqual([]);
  });

  it('has all its text in the structure, or marked as decoration', async () => {
    const loose = await all(async (page) => {
      const ids = new Set(under(await treeOf(page)).flatMap(({ id }) => id ?? []));
      const open: string[] = [];
      const astray: string[] = [];
      for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
        if ('str' in item) {
          const kept = open.some((mark) => mark === 'Artifact' || ids.has(mark));
          if (item.str.trim() !== '' && !kept) astray.push(item.str);
        } else if (item.type === 'endMarkedContent') open.pop();
        else open.push((item as { tag?: string }).tag === 'Artifact' ? 'Artifact' : (item.id ?? ''));
      }
      return astray;
    });
    expect(loose).toEqual([]);
  });

  it('has headings that skip no level, and one title for each part', async () => {
    const levels = await all(async (page) =>
      under(await treeOf(page)).flatMap(({ role }) => (/^H\d$/.test(role ?? '') ? [Number(role?.[1])] : [])),
    );
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(parts.length);
    expect(levels.filter((level, index) => level > (levels[index - 1] ?? 0) + 1)).toEqual([]);
  });

  it('has tables of rows with as many cells as their head, and every head says which way it points', async () => {
    const rows = await all(async (page) =>
      under(await treeOf(page)).flatMap(({ role, children }) =>
        role === 'TR' ? [(children ?? []).map((cell) => cell.role)] : [],
      ),
    );
    expect(rows.length).toBeGreaterThan(100);
    for (const row of rows) expect(row.every((role) => role === 'TH' || role === 'TD')).toBe(true);
    const heads = rows.filter((row) => row.every((role) => role === 'TH')).map((row) => row.length);
    for (const row of rows) expect(heads).toContain(row.length);
    expect(raw.match(/\/S \/TH\b/g)).toHaveLength(raw.match(/\/Scope \/(Row|Column)/g)?.length ?? 0);
  });

  it('describes every drawing in words', async () => {
    const figures = await all(async (page) =>
      under(await treeOf(page)).flatMap(({ role, alt }) => (role === 'Figure' ? [alt ?? ''] : [])),
    );
    expect(figures.length).toBeGreaterThan(20);
    expect(figures.filter((alt) => alt.trim() === '')).toEqual([]);
  });

  it('has links that lead somewhere, say where, and stand in the structure', async () => {
    const links = await read(async (pages, document) => {
      const found = (
        await Promise.all(
          pages.map(async (page) => {
            const nodes = under(await treeOf(page));
            return {
              inTree: nodes.filter(({ role }) => role === 'Link').length,
              annotations: await page.getAnnotations(),
            };
          }),
        )
      ).flat();
      const annotations = found.flatMap(({ annotations: each }) => each);
      const lost: string[] = [];
      for (const { dest } of annotations) if (!(await document.getDestination(dest))) lost.push(dest);
      const silent = annotations.filter(({ contentsObj }) => !contentsObj?.str).length;
      return { lost, silent, count: annotations.length, inTree: found.map(({ inTree }) => inTree) };
    });
    expect(links.lost).toEqual([]);
    expect(links.silent).toBe(0);
    expect(links.inTree.reduce((sum, each) => sum + each, 0)).toBe(links.count);
    expect(links.count).toBeGreaterThan(parts.length * 3);
  });

  it('has a bookmark for each part, and for each block in it', async () => {
    const outline = await read((_, document) => document.getOutline());
    expect(outline.map((each) => each.title)).toEqual(parts.map((part) => part.title));
    expect(outline.map(({ items }) => items.map((each: { title: string }) => each.title))).toEqual(
      parts.map(({ blocks }) => blocks.flatMap((block) => titleOf(block) ?? [])),
    );
  });

  it('says what it is: PDF/A-2a and PDF/UA-1, its language, its title as it is written', async () => {
    const { info, metadata, marked } = await read(async (_, document) => ({
      ...(await document.getMetadata()),
      marked: await document.getMarkInfo(),
    }));
    expect(marked?.Marked).toBe(true);
    expect(metadata.get('pdfaid:part')).toBe('2');
    expect(metadata.get('pdfaid:conformance')).toBe('A');
    expect(metadata.get('pdfuaid:part')).toBe('1');
    expect(metadata.get('dc:title')).toBe(title);
    expect(info).toMatchObject({ Title: title, Language: 'en', PDFFormatVersion: '1.7' });
    expect(raw).toContain('/DisplayDocTitle true');
    expect(raw).toContain('/S /GTS_PDFA1');
  });

  it('brings its own typefaces, and none is only named', () => {
    const descriptors = raw.match(/\/Type \/FontDescriptor/g) ?? [];
    expect(descriptors).toHaveLength(3);
    expect(raw.match(/\/FontFile2 /g)).toHaveLength(descriptors.length);
  });
});
