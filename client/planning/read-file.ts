import { decodeText, type Encoding } from '../../src/formats/decode.ts';
import { type ReadPairs, readPairs, type TableContext } from '../../src/site/pair-table.ts';

/** A table that was chosen or pasted. */
export interface Source {
  /** Undefined: the file is no text, or too big for a table. */
  readonly text?: string;
  /** The name of the file; none for what was pasted. */
  readonly file?: string;
  readonly encoding?: Encoding;
}

/** A table of as many pairs as a site may have, every cell long, is far smaller. */
const MOST_BYTES = 8 * 1024 * 1024;

export async function sourceOf(file: File): Promise<Source> {
  if (file.size > MOST_BYTES) return { file: file.name };
  return { ...decodeText(new Uint8Array(await file.arrayBuffer())), file: file.name };
}

export type ReadTable =
  | (Extract<ReadPairs, { ok: true }> & {
      readonly encoding: Encoding | undefined;
      /** Texts with letters that an encoding can get wrong. */
      readonly samples: readonly string[];
    })
  | Extract<ReadPairs, { ok: false }>;

const MOST_SAMPLES = 6;

export function readTable({ text, encoding }: Source, context: TableContext): ReadTable {
  if (text === undefined) return { ok: false, faults: [{ line: 1, fault: 'not-text' }] };
  const read = readPairs(text, context);
  if (!read.ok) return read;
  const texts = read.pairs.flatMap(({ name, zone, meter, adjusters }) => [
    name,
    zone ?? '',
    meter?.name ?? '',
    adjusters?.name ?? '',
  ]);
  const beyondAscii = texts.filter((each) => /[^ -~]/.test(each));
  return { ...read, encoding, samples: [...new Set(beyondAscii)].slice(0, MOST_SAMPLES) };
}
