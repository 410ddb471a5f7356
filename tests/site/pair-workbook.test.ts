import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { type CellValue, readXlsx as hucreRead, writeXlsx as hucreWrite } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { MAX_PAIRS, type PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { pairRows } from '../../src/site/pair-table.ts';
import { pairsToXlsx, readPairsXlsx } from '../../src/site/pair-workbook.ts';
import { anyPlans } from './any-plans.ts';

const PROFILES = { meters: NEUTRAL_METERS, adjusters: [NEUTRAL_ADJUSTERS] };
const bytesOf = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer());
const read = (bytes: Uint8Array) => readPairsXlsx(bytes, { profiles: PROFILES });
const faults = async (bytes: Uint8Array) => {
  const result = await read(bytes);
  return result.ok ? [] : result.faults.map(csvFaultText);
};
/** A workbook by another library, as a spreadsheet would save it. */
const workbook = async (rows: CellValue[][]) => hucreWrite({ sheets: [{ name: 'Table', rows }] });

const SHEET = 'xl/worksheets/sheet1.xml';
/** The workbook with another sheet in it. */
const withSheet = async (change: (xml: string) => string) => {
  const parts = unzipSync(
    await workbook([
      ['id', 'name'],
      ['B2', 'North'],
    ]),
  );
  const xml = strFromU8(parts[SHEET] as Uint8Array);
  return zipSync({ ...parts, [SHEET]: strToU8(change(xml)) });
};

describe('pairs as a workbook', () => {
  // Each of these begins a tag and none ends one: whoever looks for each end to the end of the file takes minutes or hours.
  it.each(['<c ', '<x:c t="e" '])(
    'a sheet of a hundred thousand times %j is read to its end, and is no table',
    async (tag) => {
      expect(await faults(await withSheet(() => tag.repeat(100_000)))).not.toEqual([]);
    },
  );

  it('what is written reads back the same, meter and adjusters too', async () => {
    await fc.assert(
      fc.asyncProperty(anyPlans, async (plans) => {
        expect(await read(await bytesOf(await pairsToXlsx(plans)))).toEqual({
          ok: true,
          pairs: plans,
          empty: [],
        });
      }),
    );
  });

  // hucre, a library that has nothing in common with the one that wrote.
  it('another library finds in it every figure as a number and every text as text', async () => {
    await fc.assert(
      fc.asyncProperty(anyPlans, async (plans) => {
        const book = await hucreRead(await bytesOf(await pairsToXlsx(plans)));
        const cells = book.sheets[0]?.rows.map((row) => row.map((cell) => cell ?? undefined));
        const expected = pairRows(plans).map((row) => [...row]);
        const width = Math.max(...(cells ?? []).map((row) => row.length));
        expect(cells).toEqual(expected.map((row) => row.slice(0, width)));
      }),
      { numRuns: 30 },
    );
  });

  it('is read as another library writes it: numbers for ids, blank rows between, cells that are missing', async () => {
    const bytes = await workbook([['Id', 'path_m', 'zone'], [], [7, 62.5], ['B3', null, 12]]);
    expect(await read(bytes)).toEqual({
      ok: true,
      pairs: [
        { id: '7', name: '7', pathLength: 62.5 },
        { id: 'B3', name: 'B3', zone: '12' },
      ],
      empty: [],
    });
    expect(await faults(await workbook([['id', 'path_m'], [], ['B2', 900]]))).toEqual([
      expect.stringMatching(/^Line 3, path_m: "900" is not from 1 to 300/),
    ]);
  });

  it('text that looks like an escape of the format stays as it is, and a control character is not lost silently', async () => {
    const of = async (name: string) => read(await bytesOf(await pairsToXlsx([{ id: 'B2', name }])));
    for (const name of ['_x0041_ & <b>', 'toString', '__proto__', 'constructor', ' two  blanks']) {
      const cells = (await hucreRead(await bytesOf(await pairsToXlsx([{ id: 'B2', name }])))).sheets[0]
        ?.rows[1];
      expect(cells?.[1]).toBe(name);
      expect(await of(name)).toMatchObject({ ok: true, pairs: [{ name: name.trim() }] });
    }
    expect(await faults(await bytesOf(await pairsToXlsx([{ id: 'B2', name: 'a\u0007b' }])))).toEqual([
      expect.stringContaining('Line 2, name: there is a character here that nobody sees (U+0007)'),
    ]);
  });
});

describe('a workbook that is refused', () => {
  it('a cell that the spreadsheet made a date of, by its line and column', async () => {
    expect(
      await faults(
        await workbook([
          ['id', 'name'],
          ['B1', 'x'],
          [new Date(0), 'x'],
        ]),
      ),
    ).toEqual([expect.stringMatching(/^Line 3, id: the spreadsheet made a date of this cell/)]);
  });

  it('a formula that failed', async () => {
    const cell = '<c r="B2" t="e"><v>#DIV/0!</v></c>';
    const bytes = await withSheet((xml) => xml.replace(/<c r="B2".*?<\/c>/, cell));
    expect(await faults(bytes)).toEqual([
      expect.stringMatching(/^Line 2, name: the formula of this cell failed/),
    ]);
  });

  it('but what is wrong only in a sheet that is not read does no harm', async () => {
    const sheets = [
      { name: 'Pairs', rows: [['id'], ['B2']] },
      { name: 'Notes', rows: [['total'], [7]] },
    ];
    const parts = unzipSync(await hucreWrite({ sheets }));
    const second = 'xl/worksheets/sheet2.xml';
    const xml = strFromU8(parts[second] as Uint8Array);
    const wrong = xml.replace(/<c r="A2".*?<\/c>/, '<c r="A2" t="e"><v>#REF!</v></c>');
    expect(wrong).not.toBe(xml);
    expect(await faults(zipSync({ ...parts, [second]: strToU8(wrong) }))).toEqual([]);
    const first = strToU8(
      strFromU8(parts[SHEET] as Uint8Array).replace(/<c r="A2".*?<\/c>/, '<c r="A2" t="e"><v>#REF!</v></c>'),
    );
    expect(await faults(zipSync({ ...parts, [SHEET]: first }))).toEqual([
      expect.stringMatching(/^Line 2, id: the formula of this cell failed/),
    ]);
  });

  it('what is no workbook, or only the beginning of one', async () => {
    const whole = await workbook([['id'], ['B2']]);
    for (const bytes of [
      whole.slice(0, 700),
      strToU8('PK\u0003\u0004 and then nothing'),
      zipSync({ a: strToU8('b') }),
    ]) {
      expect(await faults(bytes)).toEqual([expect.stringMatching(/this workbook cannot be read/)]);
    }
  });

  it('one row more than a site can have', async () => {
    const rows = Array.from({ length: MAX_PAIRS + 1 }, (_, i) => [`P${i}`]);
    expect(await faults(await workbook([['id'], ...rows]))).toEqual([
      expect.stringMatching(/^Line 2002: a site has at most 2000 pairs/),
    ]);
  });

  it('parts that are small when packed and huge when unpacked', async () => {
    const bytes = await withSheet((xml) => xml + ' '.repeat(32 * 1024 * 1024));
    expect(bytes.length).toBeLessThan(200_000);
    expect(await faults(bytes)).toEqual([expect.stringMatching(/too big for a table of pairs/)]);
  });

  it('a part that is larger than the archive says gives no more than it says', async () => {
    const bytes = await withSheet((xml) => xml.replace('</sheetData>', `</sheetData>${' '.repeat(100_000)}`));
    const view = new DataView(bytes.buffer);
    let patched = 0;
    for (let at = 0; at + 46 < bytes.length; at += 1) {
      // The central directory states the size unpacked 24 bytes after its mark (ZIP APPNOTE 4.3.12).
      if (view.getUint32(at, true) !== 0x02014b50 || view.getUint32(at + 24, true) < 100_000) continue;
      view.setUint32(at + 24, 300, true);
      patched += 1;
    }
    expect(patched).toBe(1);
    expect((await read(bytes)).ok).toBe(false);
  });

  it('cells so far apart that the gaps between them would fill the memory', async () => {
    const row = (r: number) => `<row r="${r}"><c r="XFD${r}"><v>1</v></c></row>`;
    const rows = (count: number) => Array.from({ length: count }, (_, i) => row(i + 3)).join('');
    const wide = (count: number) =>
      withSheet((xml) => xml.replace('</sheetData>', `${rows(count)}</sheetData>`));
    // 16,384 columns: with 59 rows and the two of the table 999,424 cells, with one more over a million.
    expect((await faults(await wide(59)))[0]).not.toMatch(/too big/);
    expect(await faults(await wide(60))).toEqual([expect.stringMatching(/too big for a table of pairs/)]);
  });
});

it('a table of as many pairs as a site may have, with every figure, is within the limits', async () => {
  const pair: Omit<PairPlan, 'id'> = {
    name: 'n'.repeat(80),
    zone: 'z'.repeat(60),
    meter: { ...(NEUTRAL_METERS[3] as (typeof NEUTRAL_METERS)[0]), name: 'm'.repeat(60) },
    adjusters: { ...NEUTRAL_ADJUSTERS, name: 'a'.repeat(60) },
    filters: Array.from({ length: 12 }, (_, i) => i + 1.25),
  };
  const plans = Array.from({ length: MAX_PAIRS }, (_, i) => ({ ...pair, id: `P${i}` }));
  expect(await faults(await bytesOf(await pairsToXlsx(plans)))).toEqual([]);
});
