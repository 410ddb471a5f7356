import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { PAIR_COLUMNS } from '../../src/site/pair-columns.ts';
import { csvTemplate, pairsToCsv, readPairs } from '../../src/site/pair-table.ts';

const PROFILES = { meters: NEUTRAL_METERS, adjusters: [NEUTRAL_ADJUSTERS] };
const read = (text: string) => readPairs(text, PROFILES);
const faults = (text: string): string[] => {
  const result = read(text);
  return result.ok ? [] : result.faults.map(csvFaultText);
};

describe('the template', () => {
  it('is a table that any CSV parser can read, with every column and one example', () => {
    const [header, ...rows] = parse(csvTemplate()) as string[][];
    expect(header).toEqual([...PAIR_COLUMNS]);
    expect(rows).toHaveLength(1);
  });

  it('is refused as long as its example row is in it', () => {
    expect(faults(csvTemplate())).toEqual([expect.stringContaining('Line 2, id: "EXAMPLE"')]);
  });
});

describe('reading pairs', () => {
  it('takes what is known, and leaves the rest open', () => {
    expect(read('id,name,path_m\nB2,North aisle,62.5\nB3,,\n')).toEqual({
      ok: true,
      pairs: [
        { id: 'B2', name: 'North aisle', pathLength: 62.5 },
        { id: 'B3', name: 'B3' },
      ],
    });
  });

  it.each([
    ['semicolons and a decimal comma', 'id;path_m\r\nB2;62,5\r\n'],
    ['tabs', 'id\tpath_m\nB2\t62.5'],
    ['a byte order mark', '\uFEFFid,path_m\nB2,62.5\n'],
    ['columns in another order and another case', 'PATH_M , Id\n62.5,B2\n'],
    ['empty lines and empty rows between', 'id,path_m\n\n,\nB2,62.5\n\n'],
  ])('takes %s', (_, text) => {
    expect(read(text)).toMatchObject({ ok: true, pairs: [{ id: 'B2', pathLength: 62.5 }] });
  });

  it('finds the profiles by name', () => {
    const result = read('id,meter,adjusters\nB2,8-bit counts,two hand-turned adjusters\n');
    expect(result.ok && result.pairs[0]?.meter?.unit).toBe('counts');
    expect(result.ok && result.pairs[0]?.adjusters?.name).toBe(NEUTRAL_ADJUSTERS.name);
  });

  it('names every bad row with its line, its column and what to do, and takes nothing', () => {
    const text = [
      'id,path_m,meter,alarm_threshold,alarm_unit',
      'B1,62,8-bit counts,35,percent',
      'B 2,62,,,',
      'B3,6o,,,',
      'B4,900,,,',
      'B5,62,Best meter,,',
      'B6,62,,35,',
      'B7,62,,35,furlongs',
      ',62,,,',
      'B1,62,,,',
      'B8,"1,200",,,',
      'B9,62,,,,,surplus',
    ].join('\n');
    const result = read(text);
    expect(result.ok).toBe(false);
    expect(faults(text)).toEqual([
      expect.stringMatching(/^Line 3, id: "B 2" is not an id\. Use /),
      expect.stringMatching(/^Line 4, path_m: "6o" is not a number\. Write /),
      expect.stringMatching(/^Line 5, path_m: "900" is not from 1 to 300\. Check /),
      expect.stringMatching(/^Line 6, meter: "Best meter" is not a known profile\. Use /),
      expect.stringMatching(/^Line 7, alarm_unit: give the unit /),
      expect.stringMatching(/^Line 8, alarm_unit: "furlongs" is not a unit /),
      expect.stringMatching(/^Line 9, id: this cell is empty\. Give /),
      expect.stringMatching(/^Line 10, id: "B1" is already the id of line 2\. Give /),
      expect.stringMatching(/^Line 11, path_m: "1,200" is not a number\. Write /),
      expect.stringMatching(/^Line 12: there are more cells than columns\. Quote /),
    ]);
  });

  it.each([
    ['an empty file', '', /^Line 1: there are no pairs/],
    ['a header alone', 'id,path_m\n', /^Line 1: there are no pairs/],
    ['a column it does not know', 'id,lenght\nB2,5\n', /^Line 1, lenght: this column is not known/],
    ['a column twice', 'id,path_m,path_m\nB2,5,6\n', /^Line 1, path_m: this column is there twice/],
    ['no ids', 'name\nNorth\n', /^Line 1, id: this column is missing/],
    ['a quotation mark left open', 'id,name\nB2,"North\n', /quotation mark/],
  ])('refuses %s', (_, text, message) => {
    expect(faults(text)[0]).toMatch(message);
  });

  it('names an id that is used twice, even when its rows are wrong in something else too', () => {
    expect(faults('id,path_m\nB1,far\nB1,9999\n')).toEqual([
      expect.stringMatching(/^Line 2, path_m/),
      expect.stringMatching(/^Line 3, id: "B1" is already the id of line 2/),
      expect.stringMatching(/^Line 3, path_m/),
    ]);
  });

  it('names the line where a row begins, even when an earlier cell has several lines', () => {
    expect(faults('id,name\nB1,"North\naisle"\nB 2,x\n')[0]).toMatch(/^Line 4, id/);
  });
});

it.each(['20;x', '0;40', '100', '20;;;-5'])('a kit of filters "%s" is refused by its column', (kit) => {
  expect(faults(`id,filters_percent\nB1,${kit}\n`)[0]).toMatch(/^Line 2, filters_percent/);
});

describe('round trip', () => {
  const number = (min: number, max: number) =>
    fc.option(
      fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100),
      { nil: undefined },
    );
  const text = (maxLength: number) =>
    fc
      .string({ unit: 'grapheme', minLength: 1, maxLength })
      .map((s) => s.replace(/\p{C}/gu, '').trim())
      .filter((s) => s.length > 0);
  const plan = fc
    .record({
      id: fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/).filter((id) => id !== 'EXAMPLE'),
      name: text(20),
      zone: fc.option(text(10), { nil: undefined }),
      pathLength: number(1, 300),
      emitterHeight: number(0, 100),
      alarmDelay: number(0, 600),
      filterPercent: number(1, 99),
      filters: fc.option(fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 12 }), {
        nil: undefined,
      }),
      meter: fc.option(fc.constantFrom(...NEUTRAL_METERS), { nil: undefined }),
      alarmThreshold: fc.option(
        fc.record({
          unit: fc.constantFrom('dB' as const, 'percent' as const),
          value: fc.integer({ min: 1, max: 40 }),
        }),
        { nil: undefined },
      ),
    })
    .map(
      (fields) =>
        Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as PairPlan,
    );

  it('a table that is written reads back the same', () => {
    fc.assert(
      fc.property(fc.uniqueArray(plan, { minLength: 1, maxLength: 8, selector: ({ id }) => id }), (plans) => {
        expect(read(pairsToCsv(plans))).toEqual({ ok: true, pairs: plans });
      }),
    );
  });

  it('any text is read or refused, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (rest) => {
        const result = read(`id,name\n${rest}`);
        expect(result.ok || result.faults.length > 0).toBe(true);
      }),
    );
  });
});
