import { describe, expect, it } from 'vitest';
import { columnWidths } from '../../server/report/columns.ts';
import { flow, type Piece } from '../../server/report/flow.ts';
import { loadFonts } from '../../server/report/fonts.ts';
import { Measure } from '../../server/report/measure.ts';

const piece = (height: number, more: Partial<Piece> = {}): Piece => ({ height, draw: () => {}, ...more });
const ROOM = { first: 0, top: 10, bottom: 100 };
const tops = (pieces: readonly Piece[]) => flow(pieces, ROOM).map((sheet) => sheet.map(({ y }) => y));

describe('pieces on sheets', () => {
  it('fill a sheet to its edge, and not a point further', () => {
    expect(tops([piece(50), piece(50)])).toEqual([[0, 50]]);
    expect(tops([piece(50), piece(50.1)])).toEqual([[0], [10]]);
  });

  it('that belong together go to the next sheet together', () => {
    expect(tops([piece(60), piece(10, { withNext: true }), piece(31)])).toEqual([[0], [10, 20]]);
    expect(tops([piece(60), piece(10, { withNext: true }), piece(30)])).toEqual([[0, 60, 70]]);
  });

  it('that belong together and are higher than a sheet are parted where it is full', () => {
    expect(tops([piece(60, { withNext: true }), piece(30, { withNext: true }), piece(20)])).toEqual([
      [0, 60],
      [10],
    ]);
  });

  it('of a table stand under its head again on each further sheet', () => {
    const again = piece(20);
    const rows = Array.from({ length: 5 }, () => piece(40, { again }));
    const sheets = flow([piece(20, { withNext: true }), ...rows], ROOM);
    expect(sheets.map((sheet) => sheet.map(({ y }) => y))).toEqual([
      [0, 20, 60],
      [10, 30],
      [10, 30],
      [10, 30],
    ]);
    for (const sheet of sheets.slice(1)) expect(sheet[0]?.piece).toBe(again);
  });
});

describe('columns of a table', () => {
  it('share the width, but hold their widest word', () => {
    expect(
      columnWidths(
        [
          { share: 1, widest: 10 },
          { share: 3, widest: 10 },
        ],
        100,
      ),
    ).toEqual([25, 75]);
    expect(
      columnWidths(
        [
          { share: 1, widest: 40 },
          { share: 3, widest: 10 },
        ],
        100,
      ),
    ).toEqual([40, 60]);
  });

  it('give way one after the other', () => {
    const needs = [
      { share: 1, widest: 50 },
      { share: 2, widest: 18 },
      { share: 3, widest: 10 },
    ];
    const widths = columnWidths(needs, 100);
    expect(widths[0]).toBe(50);
    expect(widths[1]).toBe(20);
    expect(widths.reduce((sum, each) => sum + each, 0)).toBeCloseTo(100);
  });

  it('are narrowed alike when the words do not fit at all', () => {
    expect(
      columnWidths(
        [
          { share: 1, widest: 150 },
          { share: 1, widest: 50 },
        ],
        100,
      ),
    ).toEqual([75, 25]);
  });
});

describe('lines', () => {
  const measure = new Measure(loadFonts());
  const text = 'The quick brown fox is 10.0 s ± 5.0 s late';

  it('are never wider than their room, and hold the whole text', () => {
    for (const room of [60, 90, 140, 500]) {
      const lines = measure.lines(text, 'plain', 9, room);
      for (const line of lines) expect(measure.width(line, 'plain', 9)).toBeLessThanOrEqual(room);
      expect(lines.join(' ').replaceAll('\u00a0', ' ')).toBe(text);
    }
  });

  it('keep a number with its unit and a sign with its number', () => {
    const lines = measure.lines(text, 'plain', 9, 60);
    expect(lines).toContainEqual(expect.stringContaining('10.0\u00a0s'));
    expect(lines).toContainEqual(expect.stringContaining('±\u00a05.0\u00a0s'));
  });

  it('break a word only where it alone is too wide', () => {
    expect(measure.lines('see ABCDEFGHIJ', 'plain', 9, 30).join('')).toBe('seeABCDEFGHIJ');
    expect(measure.lines('see ABCDEFGHIJ', 'plain', 9, 80)).toEqual(['see ABCDEFGHIJ']);
  });

  it('show that a letter is missing which the typeface does not have', () => {
    expect(measure.lines('号 Ähre', 'plain', 9, 500)).toEqual(['\ufffd Ähre']);
  });
});
