import { expect, it } from 'vitest';
import { readTable, sourceOf } from '../../client/planning/read-file.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { pairsToXlsx } from '../../src/site/pair-workbook.ts';

const CONTEXT = { profiles: { meters: [], adjusters: [] } };
const read = async (...parts: BlobPart[]) => readTable(await sourceOf(new File(parts, 'pairs.csv')), CONTEXT);

it('a file says what it was read as, whatever its name is, and shows the letters to check', async () => {
  expect(await read('id,name\nB2,Süd\nB3,South\n')).toMatchObject({
    ok: true,
    readAs: 'UTF-8',
    samples: ['Süd'],
  });
  expect(await read(new Uint8Array(Buffer.from('id,name\nB2,S\xfcd\n', 'latin1')))).toMatchObject({
    ok: true,
    readAs: 'Windows-1252',
    samples: ['Süd'],
  });
  expect(await read(await pairsToXlsx([{ id: 'B2', name: 'Süd' }]))).toMatchObject({
    ok: true,
    readAs: 'XLSX',
    samples: ['Süd'],
  });
});

it('a text that is pasted has no encoding to check', async () => {
  const pasted = { content: { kind: 'text', text: 'id\nB2\n' } } as const;
  expect(await readTable(pasted, CONTEXT)).toMatchObject({ ok: true, readAs: undefined });
});

it.each([
  [
    'a workbook of before 2007, or one with a password',
    new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0]),
    /save it as XLSX/,
  ],
  ['half a character of UTF-16', new Uint8Array([0xff, 0xfe, 0x41]), /not a table/],
  ['more than any table of a site', new Uint8Array(8 * 1024 * 1024 + 1), /too big/],
])('%s is refused in words', async (_, bytes, words) => {
  const table = await read(bytes);
  expect(table.ok ? '' : csvFaultText(table.faults[0] as never)).toMatch(words);
});
