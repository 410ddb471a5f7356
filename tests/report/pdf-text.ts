import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What `read` gives of a PDF, as another library than the one that wrote it reads it. */
export async function openPdf<A>(
  file: Uint8Array,
  read: (document: PDFDocumentProxy) => Promise<A>,
): Promise<A> {
  const task = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  try {
    return await read(await task.promise);
  } finally {
    await task.destroy();
  }
}

/** The text of each page, without white space: lines break where they fit. */
export const pdfText = (file: Uint8Array): Promise<string[]> => openPdf(file, textsOf);

async function textsOf(document: PDFDocumentProxy): Promise<string[]> {
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(bare(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  return pages;
}

/** The text of each part, without white space; its first page is where its bookmark leads. */
export const partTexts = (file: Uint8Array): Promise<string[]> =>
  openPdf(file, async (document) => {
    const pages = await textsOf(document);
    const begins: number[] = [];
    for (const { dest } of await document.getOutline()) {
      begins.push(await document.getPageIndex(Array.isArray(dest) ? dest[0] : undefined));
    }
    return begins.map((from, index) => pages.slice(from, begins[index + 1]).join(''));
  });

export const bare = (text: string): string => text.replace(/\s+/g, '');

/** The size of every run of letters, points, charts included. */
export const sizesIn = (file: Uint8Array): Promise<number[]> =>
  openPdf(file, async (document) => {
    const sizes: number[] = [];
    for (let number = 1; number <= document.numPages; number++) {
      for (const item of (await (await document.getPage(number)).getTextContent()).items) {
        if (!('str' in item) || item.str.trim() === '') continue;
        sizes.push(Math.hypot(item.transform[2], item.transform[3]));
      }
    }
    return sizes;
  });
