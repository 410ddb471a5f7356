import { createHash } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvText, plainCell } from '../../src/formats/csv.ts';
import { emptyHead, findFault } from '../../src/log/chain.ts';
import { fromJsonLines, toJsonLines } from '../../src/log/json-lines.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { FactOf } from '../../src/model/facts.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { toCsv } from '../../src/record/csv-file.ts';
import { readPairs } from '../../src/site/pair-table.ts';
import { demo } from '../server/played-site.ts';
import { accepted, overridden, Script } from './fixture.ts';

const { entries, head } = accepted();
const text = toJsonLines(entries, head);

const setupOf = ([first]: readonly Entry[]) => (first as { fact: FactOf<'opened'> }).fact.setup;

/** The visits of a played site, with where each log ends. */
const visits = demo.visits.map(({ entries: log }) => {
  const { job, hash } = log.at(-1) as Entry;
  return { entries: log, head: { job, count: log.length, hash } };
});

/** The same file with one line changed, counted from 1. */
const withLine = (line: number, change: (text: string) => string): string =>
  text
    .split('\n')
    .map((each, index) => (index + 1 === line ? change(each) : each))
    .join('\n');

describe('JSON Lines', () => {
  test('reads back as the same log, whose chain is whole', () => {
    const read = fromJsonLines(text);
    expect(read).toEqual({ ok: true, entries, head });
    expect(findFault(entries, head)).toBeUndefined();
  });

  test('any words survive', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 40 }), { maxLength: 5 }), (remarks) => {
        const s = new Script();
        for (const each of remarks) s.add('panel', { type: 'remark', seat: 'panel', text: each });
        const read = fromJsonLines(toJsonLines(s.entries, s.head));
        expect(read).toEqual({ ok: true, entries: s.entries, head: s.head });
      }),
    );
  });

  test('an empty log is one closing line', () => {
    const empty = emptyHead('JkQ3vR8sT2');
    expect(toJsonLines([], empty).split('\n')).toHaveLength(2);
    expect(fromJsonLines(toJsonLines([], empty))).toEqual({ ok: true, entries: [], head: empty });
  });

  // Node's own SHA-256 (OpenSSL), over bytes cut from the file without parsing them.
  test('each line can be checked with nothing but SHA-256', () => {
    const lines = text.trimEnd().split('\n');
    let prev = '0'.repeat(64);
    for (const line of lines.slice(0, -1)) {
      const body = line.slice('{"hash":"'.length + 64 + '","entry":'.length, -1);
      const hash = createHash('sha256').update(body, 'utf8').digest('hex');
      expect(line.slice(9, 73)).toBe(hash);
      expect(JSON.parse(body).prev).toBe(prev);
      prev = hash;
    }
    expect(JSON.parse(lines.at(-1) as string).head).toEqual({
      job: head.job,
      count: lines.length - 1,
      hash: prev,
    });
  });

  test('a file without its closing line was cut off, and the check says so', () => {
    const cut = text.split('\n').slice(0, 20).join('\n');
    expect(fromJsonLines(cut)).toEqual({ ok: false, line: 21, fault: 'no-head' });
    expect(fromJsonLines('')).toEqual({ ok: false, line: 1, fault: 'no-head' });
  });

  test('entries that are missing before the closing line do not fit the head', () => {
    const lines = text.trimEnd().split('\n');
    const read = fromJsonLines([...lines.slice(0, 20), lines.at(-1)].join('\n'));
    expect(read.ok && findFault(read.entries, read.head)).toEqual({ seq: 20, fault: 'head' });
  });

  test.each([
    ['added', (line: string) => line.replace('"entry":{', '"entry":{"added":true,')],
    ['fact.added', (line: string) => line.replace('"fact":{', '"fact":{"added":true,')],
  ])('names a field that no entry has: %s', (field, change) => {
    const at = entries.findIndex(({ actor }) => actor === 'panel') + 1;
    expect(fromJsonLines(withLine(at, change))).toEqual({
      ok: false,
      line: at,
      fault: 'unknown-field',
      field,
    });
  });

  test('names a field that no closing line has', () => {
    const strange = text.replace('"version":1,"head":{', '"version":1,"head":{"added":1,');
    const line = text.trimEnd().split('\n').length;
    expect(fromJsonLines(strange)).toEqual({ ok: false, line, fault: 'unknown-field', field: 'head.added' });
  });

  test.each([
    ['not-json', (line: string) => line.slice(0, -1)],
    ['not-json', () => ''],
    ['not-an-entry', () => '{"note":"hello"}'],
    ['not-an-entry', (line: string) => line.replace('"actor":"panel"', '"actor":"nobody"')],
    ['not-canonical', (line: string) => line.replace('"entry":{', '"entry":{ ')],
    ['after-head', () => text.trimEnd().split('\n').at(-1) as string],
  ])('names the line that is %s', (fault, change) => {
    const at = entries.findIndex(({ actor }) => actor === 'panel') + 1;
    const line = fault === 'after-head' ? at + 1 : at;
    expect(fromJsonLines(withLine(at, change))).toEqual({ ok: false, line, fault });
  });

  test('a reading changed in the file breaks the chain at that entry', () => {
    const at = entries.findIndex(({ fact }) => fact.type === 'reading' && fact.reading.kind === 'value');
    const read = fromJsonLines(withLine(at + 1, (line) => line.replace(/"value":\d+/, '"value":111')));
    expect(read.ok && findFault(read.entries, read.head)).toEqual({ seq: at, fault: 'hash' });
  });
});

// RFC 4180, read back by csv-parse, which implements it.
describe('CSV', () => {
  const read = (csv: string) =>
    parse(csv, { bom: true, columns: true, relax_column_count: false }) as Record<string, string>[];
  const rows = read(toCsv(entries, head));

  test('has one row for each entry, equal to the log', () => {
    expect(rows).toHaveLength(entries.length + 1);
    for (const [index, { seq, at, actor, fact, prev, hash }] of entries.entries()) {
      const row = rows[index];
      expect(row).toMatchObject({ seq: String(seq), actor, type: fact.type, prev, hash });
      expect(Date.parse(row?.time_utc ?? '')).toBe(at);
      if (fact.type === 'reading') {
        expect(row?.reading_kind).toBe(fact.reading.kind);
        expect(row?.reading).toBe(fact.reading.kind === 'value' ? String(fact.reading.value) : '');
        expect(row?.unit).toBe(fact.reading.kind === 'value' ? 'counts' : '');
      }
      if (fact.type === 'move') {
        expect(row?.axis).toBe(fact.axis);
        expect(Number(row?.turns)).toBe(fact.eighths / 8);
        expect(row?.instruction).toBe(String(fact.instruction));
      }
      if (fact.type === 'said' || fact.type === 'remark') expect(plainCell(row?.text ?? '')).toBe(fact.text);
      if (fact.type === 'instruction') {
        expect(row).toMatchObject({ text: fact.say, why: fact.why, rule: fact.advice.rule });
        expect(row?.because).toBe(fact.advice.because.join(' '));
      }
      if (fact.type === 'retract') expect(rows[fact.target]?.retracted_by).toBe(String(seq));
      if (fact.type === 'reading' && fact.replaces !== undefined) {
        expect(row?.target).toBe(String(fact.replaces));
        expect(rows[fact.replaces]?.retracted_by).toBe(String(seq));
      }
    }
  });

  test('has the head in its last row', () => {
    expect(rows.at(-1)).toMatchObject({ type: 'head', seq: String(head.count), hash: head.hash });
  });

  test('marks an override and keeps its reason', () => {
    const { entries: log, head: end } = overridden();
    const accept = read(toCsv(log, end)).find(({ type }) => type === 'accept');
    expect(accept?.text).toMatch(/by override: Ladder has to clear/);
  });

  test('begins with the mark that tells spreadsheets it is UTF-8, ends every line with CRLF and gives every record the same fields (RFC 4180, 2.1 and 2.4)', () => {
    const csv = toCsv(entries, head);
    expect(csv.startsWith('\uFEFF')).toBe(true);
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(new Set((parse(csv, { bom: true }) as string[][]).map((row) => row.length)).size).toBe(1);
  });

  // OWASP, "CSV Injection": cells that start with these are run as formulas. A spreadsheet that expects semicolons or
  // tabs sees cells begin inside ours; quotation marks, blanks and signs of no width do not stop all of them.
  test('no text is read as a formula, wherever a spreadsheet sees a cell begin, and none is lost', () => {
    const start = fc.constantFrom(
      '',
      '=',
      '+',
      '-',
      '@',
      '\t',
      '\r',
      '\n',
      "'",
      "''=",
      '＝',
      '%',
      '|',
      '%=',
      '|=',
    );
    const before = fc.constantFrom(
      '',
      ';',
      ';;',
      'a;',
      '\t',
      'a\t',
      '\n',
      'a|',
      '"',
      '\u200b',
      '\ufeff',
      '\u2060 ',
      ' ',
      "a;'",
    );
    const nasty = fc.tuple(before, start, fc.string({ unit: 'grapheme', maxLength: 12 }), before, start);
    fc.assert(
      fc.property(nasty, (parts) => {
        const s = new Script();
        s.add('panel', { type: 'remark', seat: 'panel', text: parts.join('') });
        const cell = read(toCsv(s.entries, s.head))[0]?.text ?? '';
        for (const piece of cell.split(/[;\t\r\n|]/)) {
          expect(piece).not.toMatch(/^[\s"\u200b\u2060\ufeff]*[=+\-@%＝＋－＠]/);
        }
        expect(plainCell(cell)).toBe(parts.join(''));
      }),
      { numRuns: 2_000 },
    );
  });

  test.each([
    [';=1+1', "';'=1+1"],
    ['%=1+1', "'%=1+1"],
    ["|calc'!A1", "'|calc'!A1"],
    ['\u200b=1+1', "'\u200b=1+1"],
    // Unicode, DerivedCoreProperties: ignorable signs that are no format characters (Cf).
    ['\u034f=1+1', "'\u034f=1+1"],
    ['\ufe0f=1+1', "'\ufe0f=1+1"],
    ['\u3164@SUM(1)', "'\u3164@SUM(1)"],
    ['\u0001=1+1', "'\u0001=1+1"],
    ['＝1+1', "'＝1+1"],
    ['﹦1+1', "'﹦1+1"],
    ['a\t﹢1', "a\t'﹢1"],
    ['\t=1+1', "'\t'=1+1"],
    ['\r=1+1', "'\r'=1+1"],
    ['see;=1+1', "see;'=1+1"],
    ["'quoted'", "''quoted'"],
    ['back a quarter, -3 dB; then hold', 'back a quarter, -3 dB; then hold'],
    ["the hall's panel; 'north'", "the hall's panel;' 'north'"],
  ])('%j stands in a cell as %j', (text, cell) => {
    const s = new Script();
    s.add('panel', { type: 'remark', seat: 'panel', text });
    expect(read(toCsv(s.entries, s.head))[0]?.text).toBe(cell);
    expect(plainCell(cell)).toBe(text);
  });

  // XML Schema Part 2, decimal: no exponent.
  test('every number is a decimal that reads back as the same number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const cell = csvText([[value]]).trim();
        expect(cell).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(cell)).toBe(value + 0);
      }),
    );
    expect(csvText([[1e-7, -2.5e-9, 1e21, 1.25e22]])).toBe(
      '0.0000001,-0.0000000025,1000000000000000000000,12500000000000000000000\r\n',
    );
  });

  test('carries the band and the limits of the meter in its first row and beside each reading, and nowhere else', () => {
    const { meter } = setupOf(entries);
    const limits = {
      band_low: String(meter.bandLow),
      band_high: String(meter.bandHigh),
      lost_at: String(meter.lostAt),
      saturated_at: String(meter.saturatedAt),
    };
    for (const row of rows) {
      const has = row.type === 'opened' || row.reading_kind !== '';
      expect(row).toMatchObject(
        has ? limits : { band_low: '', band_high: '', lost_at: '', saturated_at: '' },
      );
    }
  });

  /** What stands in the columns of a plan, read as a table of pairs. */
  const planIn = (row: Record<string, string> | undefined) => {
    const cells = Object.entries(row ?? {}).filter(([name]) => name.startsWith('plan_'));
    const table = [
      cells.map(([name]) => name.replace('plan_', '')),
      cells.map(([, cell]) => plainCell(cell)),
    ];
    const result = readPairs(csvText(table), { profiles: { meters: [], adjusters: [] } });
    if (!result.ok) throw new Error(result.faults.map(csvFaultText).join());
    return result.pairs[0];
  };

  test('carries the plan of a visit, with the meter and adjusters that were used, so that it reads back whole', () => {
    for (const { entries: log, head: end } of visits) {
      const { plan, meter, adjusters } = setupOf(log);
      const [first, second] = read(toCsv(log, end));
      expect(planIn(first)).toEqual({ ...plan, meter, adjusters });
      expect(second?.plan_id).toBe('');
      const threshold = plan?.alarmThreshold;
      // EN 54-12, from memory: a loss of p percent is 10 * log10(100 / (100 - p)) dB.
      const db =
        threshold &&
        (threshold.unit === 'dB' ? threshold.value : 10 * Math.log10(100 / (100 - threshold.value)));
      if (db === undefined) expect(first?.alarm_threshold_db).toBe('');
      else expect(Number(first?.alarm_threshold_db)).toBeCloseTo(db, 9);
    }
  });

  test('carries each plan in the log of a site', () => {
    const planned = demo.site.flatMap(({ seq, fact }) =>
      fact.type === 'pair-planned' ? [{ seq, pair: fact.pair }] : [],
    );
    expect(planned.length).toBeGreaterThan(5);
    const table = read(toCsv(demo.site, emptyHead('JkQ3vR8sT2')));
    for (const { seq, pair } of planned) expect(planIn(table[seq])).toEqual(pair);
  });

  test('says what a signature covers, and for each entry the first signature that does', () => {
    const signed = visits.filter(({ entries: log }) => log.some(({ fact }) => fact.type === 'signed'));
    expect(signed.length).toBeGreaterThan(0);
    for (const { entries: log, head: end } of signed) {
      const table = read(toCsv(log, end));
      const at = log.findIndex(({ fact }) => fact.type === 'signed');
      const fact = log[at]?.fact as FactOf<'signed'>;
      expect(table[at]).toMatchObject({
        signed_name: fact.name,
        signed_role: fact.role,
        signed_count: String(fact.head.count),
        signed_hash: log[fact.head.count - 1]?.hash,
        signed_findings: fact.findings.join(' '),
      });
      // The last entry that is covered, and the first that is not.
      expect(table[fact.head.count - 1]?.signed_in).toBe(String(at));
      expect(table[fact.head.count]?.signed_in).toBe('');
      expect(table[0]?.signed_in).toBe(String(at));
    }
  });

  test('negative numbers stay numbers', () => {
    const turned = rows.find(({ axis, turns }) => axis === 'horizontal' && Number(turns) < 0);
    expect(turned?.turns).toBe('-0.25');
  });
});
