import { decodeText, type Encoding } from '../../src/formats/decode.ts';
import { type ReadPairs, readPairs, type TableContext } from '../../src/site/pair-table.ts';

/** A table that was chosen or pasted. */
export interface Source {
  /** The name of the file; none for what was pasted. */
  readonly file?: string;
  readonly content:
    | { readonly kind: 'text'; readonly text: string; readonly encoding?: Encoding }
    | { readonly kind: 'workbook'; readonly bytes: Uint8Array }
    | { readonly kind: 'unreadable'; readonly why: 'not-text' | 'not-xlsx' | 'too-big' };
}

/** How a table was read: the encoding of its letters, or as a workbook. */
export type ReadAs = Encoding | 'XLSX';

/** A table of as many pairs as a site may have, every cell long, is far smaller. */
const MOST_BYTES = 8 * 1024 * 1024;

export async function sourceOf(file: File): Promise<Source> {
  const of = (content: Source['content']): Source => ({ file: file.name, content });
  if (file.size > MOST_BYTES) return of({ kind: 'unreadable', why: 'too-big' });
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isZip(bytes)) return of({ kind: 'workbook', bytes });
  if (isOldWorkbook(bytes)) return of({ kind: 'unreadable', why: 'not-xlsx' });
  const text = decodeText(bytes);
  return of(text ? { kind: 'text', ...text } : { kind: 'unreadable', why: 'not-text' });
}

/** As a workbook begins. */
const isZip = ([p, k, three, four]: Uint8Array): boolean =>
  p === 0x50 && k === 0x4b && three === 3 && four === 4;

/** As a workbook of before 2007 begins, and one with a password. */
const isOldWorkbook = ([one, two, three, four]: Uint8Array): boolean =>
  one === 0xd0 && two === 0xcf && three === 0x11 && four === 0xe0;

export type ReadTable =
  | (Extract<ReadPairs, { ok: true }> & {
      readonly readAs: ReadAs | undefined;
      /** Texts with letters that an encoding can get wrong. */
      readonly samples: readonly string[];
    })
  | Extract<ReadPairs, { ok: false }>;

const MOST_SAMPLES = 6;

/** The libraries for workbooks are fetched when the first one is read. */
export async function readTable({ content }: Source, context: TableContext): Promise<ReadTable> {
  const read = await readContent(content, context);
  if (!read.ok) return read;
  const texts = read.pairs.flatMap(({ name, zone, meter, adjusters }) => [
    name,
    zone ?? '',
    meter?.name ?? '',
    adjusters?.name ?? '',
  ]);
  const beyondAscii = texts.filter((each) => /[^ -~]/.test(each));
  const readAs =
    content.kind === 'workbook' ? 'XLSX' : content.kind === 'text' ? content.encoding : undefined;
  return { ...read, readAs, samples: [...new Set(beyondAscii)].slice(0, MOST_SAMPLES) };
}

async function readContent(content: Source['content'], context: TableContext): Promise<ReadPairs> {
  switch (content.kind) {
    case 'text':
      return readPairs(content.text, context);
    case 'workbook':
      return (await import('../../src/site/pair-workbook.ts')).readPairsXlsx(content.bytes, context);
    case 'unreadable':
      return { ok: false, faults: [{ line: 1, fault: content.why }] };
  }
}
