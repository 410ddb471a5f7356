import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/formats/decode.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { readPairs } from '../../src/site/pair-table.ts';

const bytes = (...parts: (string | number[])[]) =>
  new Uint8Array(
    parts.flatMap((part) => (typeof part === 'string' ? [...Buffer.from(part, 'latin1')] : part)),
  );

/** The code points of bytes 80 to 9F: Microsoft's table of code page 1252, from memory; undefined ones are left out. */
const CP1252: Record<number, number> = {
  128: 0x20ac,
  130: 0x201a,
  131: 0x0192,
  132: 0x201e,
  133: 0x2026,
  134: 0x2020,
  135: 0x2021,
  136: 0x02c6,
  137: 0x2030,
  138: 0x0160,
  139: 0x2039,
  140: 0x0152,
  142: 0x017d,
  145: 0x2018,
  146: 0x2019,
  147: 0x201c,
  148: 0x201d,
  149: 0x2022,
  150: 0x2013,
  151: 0x2014,
  152: 0x02dc,
  153: 0x2122,
  154: 0x0161,
  155: 0x203a,
  156: 0x0153,
  158: 0x017e,
  159: 0x0178,
};

describe('the bytes of a table', () => {
  it('are UTF-8 where they can be, with its mark or without', () => {
    const text = 'id,name\nB2,Łódź – Nord\n';
    expect(decodeText(new TextEncoder().encode(text))).toEqual({ text, encoding: 'UTF-8' });
    expect(decodeText(new TextEncoder().encode(`\uFEFF${text}`))).toEqual({ text, encoding: 'UTF-8' });
  });

  it('are UTF-16 by their mark, in either order', () => {
    const text = 'id\tname\nB2\tŁódź\n';
    const little = Buffer.from(`\uFEFF${text}`, 'utf16le');
    expect(decodeText(new Uint8Array(little))).toEqual({ text, encoding: 'UTF-16' });
    expect(decodeText(new Uint8Array(Buffer.from(little).swap16()))).toEqual({ text, encoding: 'UTF-16' });
    expect(decodeText(bytes([0xff, 0xfe, 0x41]))).toBeUndefined();
  });

  it('are else Windows-1252, every byte of it', () => {
    for (let byte = 0x80; byte <= 0xff; byte += 1) {
      const expected = byte < 0xa0 ? (CP1252[byte] ?? byte) : byte;
      // A byte alone is never valid UTF-8.
      expect(decodeText(bytes([byte]))).toEqual({
        text: String.fromCodePoint(expected),
        encoding: 'Windows-1252',
      });
    }
  });

  it('a name in Windows-1252 is stored as it is read, and never as a lost letter', () => {
    const { text } = decodeText(
      bytes('id;name\nB2;Halle S', [0xfc], 'd ', [0x96], ' T', [0xfc], 'r 4\n'),
    ) ?? { text: '' };
    const read = readPairs(text, { profiles: { meters: [], adjusters: [] } });
    expect(read).toMatchObject({ ok: true, pairs: [{ name: 'Halle Süd – Tür 4' }] });
  });

  it.each([0x81, 0x8d, 0x8f, 0x90, 0x9d])(
    'a byte that Windows-1252 does not have is refused in its row: %i',
    (byte) => {
      const { text } = decodeText(bytes('id,name\nB1,Fine\nB2,x', [byte, 0xe9], '\n')) ?? { text: '' };
      const read = readPairs(text, { profiles: { meters: [], adjusters: [] } });
      expect(read.ok ? [] : read.faults.map(csvFaultText)).toEqual([
        expect.stringMatching(/^Line 3, name: there is a character here that nobody sees \(U\+00/),
      ]);
    },
  );
});
