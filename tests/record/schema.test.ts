import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { lineSchema } from '../../src/log/schema.ts';
import { Fact } from '../../src/model/facts.ts';
import { kindsOf } from '../../src/model/kinds.ts';
import { COLUMNS } from '../../src/record/csv-columns.ts';
import { csvMetadata, toCsv } from '../../src/record/csv-file.ts';
import { serve } from '../server/house.ts';
import { demo } from '../server/played-site.ts';
import { accepted, overridden } from './fixture.ts';

const page = readFileSync(new URL('../../docs/export.md', import.meta.url), 'utf8');
const { entries, head } = accepted();

/** Every line of all logs to export: a site's, those of its visits, and two written by hand. */
const lines = [
  { entries: demo.site },
  ...demo.visits,
  { entries },
  { entries: overridden().entries },
].flatMap(({ entries: log }) => {
  const last = log.at(-1);
  if (!last) throw new Error('an empty log');
  return toJsonLines(log, { job: last.job, count: log.length, hash: last.hash }).trimEnd().split('\n');
});

// JSON Schema 2020-12, by ajv.
describe('the schema of the JSON Lines', () => {
  const holds = new Ajv2020({ strict: true }).compile(lineSchema());

  it('holds for every line of every export', () => {
    expect(lines.length).toBeGreaterThan(2_000);
    for (const line of lines) {
      holds(JSON.parse(line));
      expect(holds.errors).toBeNull();
    }
  });

  it.each([
    ['an actor nobody knows', (line: string) => line.replace('"actor":"panel"', '"actor":"nobody"')],
    ['a field too many', (line: string) => line.replace('"entry":{', '"entry":{"added":true,')],
    ['a hash cut short', (line: string) => line.replace('{"hash":"', '{"hash":"0')],
    [
      'a number in the place of a reading',
      (line: string) => line.replace(/"reading":\{[^}]*\}/, '"reading":142'),
    ],
    ['a kind of fact nobody knows', (line: string) => line.replace('"type":"reading"', '"type":"rumour"')],
  ])('does not hold for a line with %s', (_, change) => {
    const line =
      lines.find((each) => each.includes('"type":"reading"') && each.includes('"actor":"panel"')) ?? '';
    expect(holds(JSON.parse(line))).toBe(true);
    expect(change(line)).not.toBe(line);
    expect(holds(JSON.parse(change(line)))).toBe(false);
  });

  it('describes every fact', () => {
    const told = new Map<string, unknown>();
    JSON.stringify(lineSchema(), (_, value) => {
      const type = value?.properties?.type?.const;
      if (type) told.set(type, value.description);
      return value;
    });
    const types = kindsOf(Fact, 'type');
    expect([...told.keys()].sort()).toEqual([...types].sort());
    for (const type of types) expect(told.get(type), type).toMatch(/\w{3,}.*\.$/);
  });

  it('is kept in the documentation exactly as the program writes it', async () => {
    // Written again with `npx vitest run tests/record/schema.test.ts -u`.
    await expect(`${JSON.stringify(lineSchema(), null, 1)}\n`).toMatchFileSnapshot(
      '../../docs/export.schema.json',
    );
  });
});

// CSV on the Web metadata, and the table read by csv-parse.
describe('the columns of the CSV', () => {
  const [header, ...rows] = parse(toCsv(entries, head), { bom: true }) as string[][];

  it('are those in the documentation, in its order and words', () => {
    const [, table = ''] = page.split('<!-- columns:');
    const told = [...table.matchAll(/^\| `(\w+)` \| (\w+) \| (.+) \|$/gm)].map(([, ...cells]) => cells);
    expect(told).toEqual(Object.entries(COLUMNS).map(([name, { is, says }]) => [name, is, says]));
    expect(header).toEqual(told.map(([name]) => name));
    expect(csvMetadata()).toMatchObject({
      tableSchema: { columns: told.map(([name, datatype]) => ({ name, datatype })) },
    });
  });

  // XML Schema Part 2: the lexical forms of the four datatypes.
  it('hold the type of value that the documentation says', () => {
    const FORM = {
      integer: /^-?\d+$/,
      decimal: /^-?\d+(\.\d+)?$/,
      dateTime: /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/,
      string: /^/,
    };
    for (const row of rows)
      for (const [i, { is }] of Object.values(COLUMNS).entries())
        if (row[i]) expect(row[i]).toMatch(FORM[is]);
  });
});

it('the server gives both to anyone who asks', async () => {
  const { url } = await serve();
  const get = async (path: string) => (await fetch(`${url}/api/${path}`)).json();
  expect(await get('export.schema.json')).toEqual(JSON.parse(JSON.stringify(lineSchema())));
  expect(await get('export.csv-metadata.json')).toEqual(csvMetadata());
});
