import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** The text of each page of a PDF as another library reads it, without white space: lines break where they fit. */
export async function pdfText(file: Uint8Array): Promise<string[]> {
  const task = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  const document = await task.promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(bare(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  await task.destroy();
  return pages;
}

export const bare = (text: string): string => text.replace(/\s+/g, '');
