import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_PAIRS, type PairPlan } from '../../src/model/pair-plan.ts';
import {
  type AdjusterProfile,
  type MeterProfile,
  NEUTRAL_ADJUSTERS,
  NEUTRAL_METERS,
} from '../../src/model/profile.ts';
import { csvFaultText } from '../../src/phrases/table-faults.ts';
import { changeText } from '../../src/phrases/table-preview.ts';
import { PAIR_COLUMNS } from '../../src/site/pair-columns.ts';
import { pairsToCsv, readPairs, type TableContext, TEMPLATE } from '../../src/site/pair-table.ts';
import { changesBy, fieldChanges, overLimit } from '../../src/site/plan-changes.ts';
import { anyPlans } from './any-plans.ts';

const PROFILES = { meters: NEUTRAL_METERS, adjusters: [NEUTRAL_ADJUSTERS] };
const read = (text: string, table: Partial<TableContext> = {}) =>
  readPairs(text, { profiles: PROFILES, ...table });
const faults = (text: string, table: Partial<TableContext> = {}): string[] => {
  const result = read(text, table);
  return result.ok ? [] : result.faults.map(csvFaultText);
};

describe('the template', () => {
  it('is a table that any CSV parser can read, with every column and one example', () => {
    const [header, ...rows] = parse(pairsToCsv(TEMPLATE)) as string[][];
    expect(header).toEqual([...PAIR_COLUMNS]);
    expect(rows).toHaveLength(1);
  });

  it('is refused as long as its example row is in it', () => {
    expect(faults(pairsToCsv(TEMPLATE))).toEqual([expect.stringContaining('Line 2, id: "EXAMPLE"')]);
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
      empty: [],
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
    expect(faults('id,name\nB1,"North\naisle"\nB 2,x\n')).toEqual([
      expect.stringMatching(/^Line 2, name: there is a character here that nobody sees \(U\+000A\)/),
      expect.stringMatching(/^Line 4, id/),
    ]);
  });
});

it.each(['20;x', '0;40', '100', '20;;;-5'])('a kit of filters "%s" is refused by its column', (kit) => {
  expect(faults(`id,filters_percent\nB1,${kit}\n`)[0]).toMatch(/^Line 2, filters_percent/);
});

describe('a table with some of the columns', () => {
  const METER = NEUTRAL_METERS[1] as MeterProfile;
  const B2: PairPlan = {
    id: 'B2',
    name: 'North aisle',
    zone: '7',
    pathLength: 62,
    alarmThreshold: { unit: 'percent', value: 35 },
    filters: [20, 40],
    meter: METER,
    adjusters: { ...NEUTRAL_ADJUSTERS, backlash: 1.5 },
  };
  const onSite = [B2];
  const planOf = (text: string, emptyClears = false) => {
    const result = read(text, { onSite, emptyClears });
    if (!result.ok) throw new Error(result.faults.map(csvFaultText).join());
    return result.pairs[0];
  };

  it('changes only those', () => {
    expect(planOf('id,path_m\nB2,64.5\n')).toEqual({ ...B2, pathLength: 64.5 });
    expect(planOf('id,name\nB2,South aisle\n')).toEqual({ ...B2, name: 'South aisle' });
    expect(planOf('id\nB2\n')).toEqual(B2);
  });

  it('an empty cell leaves what the plan has, and takes it away only when that was said', () => {
    const text =
      'id,name,zone,path_m,filters_percent,alarm_threshold,alarm_unit,meter,spacing_m\nB2,,,,,,,,\n';
    expect(planOf(text)).toEqual(B2);
    expect(planOf(text, true)).toEqual({ id: 'B2', name: 'B2', adjusters: B2.adjusters });
    const empty = ['name', 'zone', 'path_m', 'alarm_threshold', 'filters_percent', 'meter'];
    for (const emptyClears of [false, true]) {
      const result = read(text, { onSite, emptyClears });
      const columns = result.ok ? result.empty[0]?.columns : [];
      expect(columns?.toSorted()).toEqual(empty.toSorted());
    }
  });

  it('changes single figures of the meter and the adjusters that the pair has', () => {
    expect(planOf('id,meter_band_low\nB2,90\n')).toEqual({ ...B2, meter: { ...METER, bandLow: 90 } });
    expect(planOf('id,meter,meter_settle_s\nB2,,2.5\n')).toEqual({
      ...B2,
      meter: { ...METER, settleMs: 2500 },
    });
    expect(planOf('id,adjusters_backlash_turns\nB2,0.25\n')).toEqual({
      ...B2,
      adjusters: { ...NEUTRAL_ADJUSTERS, backlash: 2 },
    });
  });

  it('an empty cell leaves a figure that a profile may lack, too, even beside all the others', () => {
    const own: PairPlan = {
      id: 'B2',
      name: 'B2',
      meter: NEUTRAL_METERS[3] as MeterProfile,
      adjusters: { ...NEUTRAL_ADJUSTERS, degreesPerTurn: 0.7 },
    };
    const { degreesPerTurn: _, ...adjusters } = own.adjusters as AdjusterProfile;
    const all = pairsToCsv([{ ...own, adjusters }]);
    const alone = 'id,adjusters_degrees_per_turn\nB2,\n';
    for (const table of [all, alone]) {
      const kept = read(table, { onSite: [own] });
      expect(kept).toEqual({
        ok: true,
        pairs: [own],
        empty: [{ id: 'B2', columns: ['adjusters_degrees_per_turn'] }],
      });
      const taken = read(table, { onSite: [own], emptyClears: true });
      expect(taken).toMatchObject({ ok: true, pairs: [{ ...own, adjusters }] });
      expect(taken.ok && taken.pairs[0]?.adjusters).toEqual(adjusters);
    }
    // Another meter brings its own unit; the cell for the old one's decibels says nothing.
    const other = read('id,meter,meter_db_per_unit\nB2,8-bit counts,\n', { onSite: [own] });
    expect(other).toMatchObject({ ok: true, pairs: [{ meter: NEUTRAL_METERS[1] }], empty: [] });
  });

  it('a name means the meter that the pair has, before one that only has the same name', () => {
    const own: PairPlan = { ...B2, meter: { ...METER, bandHigh: 170 } };
    const result = read(`id,meter,meter_band_low\nB2,${METER.name},90\n`, { onSite: [own] });
    expect(result.ok && result.pairs[0]?.meter).toEqual({ ...METER, bandLow: 90, bandHigh: 170 });
  });

  it('shows each field, old and new', () => {
    const after = planOf('id,path_m,zone,meter_band_low\nB2,64.5,8,90\n') as PairPlan;
    expect(fieldChanges(B2, after)).toEqual([
      { column: 'zone', from: '7', to: '8' },
      { column: 'path_m', from: 62, to: 64.5 },
      { column: 'meter_band_low', from: 100, to: 90 },
    ]);
    expect(changeText(62, 64.5)).toBe('62 → 64.5');
    expect(changeText(35, undefined)).toBe('35 → nothing');
  });

  it('a pair that was removed comes back with the plan it had', () => {
    const dropped = { plan: B2, dropped: { at: 1, reason: 'Wall moved' } };
    const after = planOf('id,path_m\nB2,64.5\n') as PairPlan;
    expect(changesBy([after], [dropped])).toEqual([
      { plan: { ...B2, pathLength: 64.5 }, kind: 'back', fields: [{ column: 'path_m', from: 62, to: 64.5 }] },
    ]);
  });

  it.each([
    ['a threshold without its unit', 'id,alarm_threshold\nB2,40\n', /^Line 2, alarm_unit: give the unit/],
    [
      'a unit without its threshold',
      'id,alarm_unit\nB2,dB\n',
      /^Line 2, alarm_unit: "dB" give the alarm threshold/,
    ],
    [
      'a figure for a meter that nobody named',
      'id,meter_band_low\nB9,90\n',
      /^Line 2, meter: this cell is empty/,
    ],
    [
      'a law that is none',
      'id,meter_law\nB2,cubic\n',
      /^Line 2, meter_law: "cubic" is not one of these: linear, /,
    ],
    [
      'a band that is upside down',
      'id,meter_band_low\nB2,200\n',
      /^Line 2, meter_band_high: does not fit\. .*must lie above/,
    ],
    [
      'a turn that is no eighth',
      'id,adjusters_travel_turns\nB2,5.03\n',
      /^Line 2, adjusters_travel_turns: "5\.03" does not fit/,
    ],
  ])('refuses %s', (_, text, message) => {
    expect(faults(text, { onSite })[0]).toMatch(message);
  });
});

describe('feet, and losses told for each foot or metre', () => {
  it('each column says its unit, and a cell may name another', () => {
    expect(read('id,path_ft,spacing_m,range_max_ft\nB2,200,14,330 ft\nB3,61 m,40 ft,\n')).toMatchObject({
      ok: true,
      pairs: [
        { pathLength: 60.96, spacing: 14, rangeMax: 100.584 },
        { pathLength: 61, spacing: 12.192 },
      ],
    });
  });

  it('a column in both units is there twice; faults name it as it is written, with limits in its unit', () => {
    expect(faults('id,path_m,path_ft\nB2,62,203\n')).toEqual([
      expect.stringMatching(/^Line 1, path_ft: this column is there twice/),
    ]);
    expect(faults('id,path_ft\nB2,985\n')).toEqual([
      expect.stringMatching(/^Line 2, path_ft: "985" is not from 3\.29 to 984\.25\./),
    ]);
    expect(faults('id,range_min_ft,range_max_ft\nB2,330,300\n')).toEqual([
      expect.stringMatching(/^Line 2, range_max_ft: "300" is below range_min_ft/),
    ]);
  });

  it('a threshold for each foot becomes dB over the path; without a path it is refused', () => {
    const result = read('id,path_ft,alarm_threshold,alarm_unit\nB2,10,2,%/ft\nB3,10,2,percent/ft\n');
    const db = -10 * Math.log10(0.98 ** 10);
    for (const pair of result.ok ? result.pairs : []) {
      expect(pair.alarmThreshold?.unit).toBe('dB');
      expect(pair.alarmThreshold?.value).toBeCloseTo(db, 6);
    }
    expect(result.ok).toBe(true);
    expect(faults('id,alarm_threshold,alarm_unit\nB2,2,%/ft\n')).toEqual([
      expect.stringMatching(
        /^Line 2, alarm_threshold: "2" percent per metre or foot is told for the whole path/,
      ),
    ]);
    const onSite: PairPlan[] = [{ id: 'B2', name: 'B2', pathLength: 3.048 }];
    expect(faults('id,alarm_threshold,alarm_unit\nB2,2,%/ft\n', { onSite })).toEqual([]);
  });

  it('the preview shows a length in the unit of the site', () => {
    expect(changeText(62, 9.144, 'ft')).toBe('203.4 ft → 30 ft');
    expect(changeText(undefined, 9.144, 'm')).toBe('nothing → 9.144 m');
  });
});

describe('what is refused by name', () => {
  const onSite: PairPlan[] = [{ id: 'B2', name: 'B2' }];

  it('ids that differ in case only, within the table and from those on the site', () => {
    expect(faults('id\nA1\na1\n')).toEqual([
      expect.stringMatching(/^Line 3, id: "a1" is A1 of line 2 but for capital/),
    ]);
    expect(faults('id\nb2\n', { onSite })).toEqual([
      expect.stringMatching(/^Line 2, id: "b2" is the pair B2 of this site but for capital/),
    ]);
    expect(faults('id\nB2\n', { onSite })).toEqual([]);
  });

  it('on a site that has both already, either can still be planned', () => {
    const both = [...onSite, { id: 'b2', name: 'b2' }];
    expect(faults('id\nb2\n', { onSite: both })).toEqual([]);
  });

  // Unicode 16, chapter 23: controls; UAX 9: marks, embeddings, overrides and isolates.
  it.each([
    0x00, 0x07, 0x1f, 0x7f, 0x81, 0x9d, 0x61c, 0x200e, 0x200f, 0x202a, 0x202e, 0x2066, 0x2069, 0xfffd,
  ])('the character %i, which nobody sees, in a name, a zone, a meter', (code) => {
    const hidden = `x${String.fromCodePoint(code)}y`;
    const named = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    for (const column of ['name', 'zone', 'meter', 'meter_unit']) {
      const [fault] = faults(`id,${column}\nB2,"${hidden}"\n`);
      expect(fault).toContain(`Line 2, ${column}: there is a character here that nobody sees (${named})`);
    }
  });

  it.each(['Łódź hall', '北ホール', 'قاعة', 'Ⅱ – "east"', '👩‍🔧'])(
    'but no letter of any script: %s',
    (name) => {
      expect(read(`id,name\nB2,"${name.replaceAll('"', '""')}"\n`)).toMatchObject({
        ok: true,
        pairs: [{ name }],
      });
    },
  );

  it.each([
    ['range_min_m,range_max_m', '100,100', '100.1,100', 'Line 2, range_max_m: "100" is below range_min_m'],
    [
      'emitter_height_m,ceiling_height_m',
      '9,9',
      '9.01,9',
      'Line 2, ceiling_height_m: "9" is below emitter_height_m',
    ],
    [
      'receiver_height_m,ceiling_height_m',
      '9,9',
      '9.01,9',
      'Line 2, ceiling_height_m: "9" is below receiver_height_m',
    ],
  ])('an inverted range of %s', (columns, equal, inverted, message) => {
    expect(faults(`id,${columns}\nB2,${equal}\n`)).toEqual([]);
    expect(faults(`id,${columns}\nB2,${inverted}\n`)).toEqual([expect.stringContaining(message)]);
  });

  it('a range that only what the site has makes inverted', () => {
    const has: PairPlan[] = [{ id: 'B2', name: 'B2', rangeMax: 100 }];
    expect(faults('id,range_min_m\nB2,101\n', { onSite: has })[0]).toMatch(
      /range_max_m.* is below range_min_m/,
    );
  });

  it('one row more than a site can have', () => {
    const rows = (count: number) => `id\n${Array.from({ length: count }, (_, i) => `P${i}\n`).join('')}`;
    expect(faults(rows(MAX_PAIRS))).toEqual([]);
    expect(faults(rows(MAX_PAIRS + 1))).toEqual([
      expect.stringMatching(/^Line 2002: a site has at most 2000 pairs/),
    ]);
  });

  it('together with the pairs of the site, removed ones too, one pair more than it can have', () => {
    const many = Array.from({ length: MAX_PAIRS }, (_, i) => ({ id: `P${i}`, name: 'x' }));
    const before = many.slice(1).map((plan) => ({ plan, dropped: true }));
    expect(overLimit(many, before)).toBeUndefined();
    expect(overLimit([...many, { id: 'Q', name: 'x' }], before)).toBe(MAX_PAIRS + 1);
  });
});

describe('round trip', () => {
  it('a table that is written reads back the same', () => {
    fc.assert(
      fc.property(anyPlans, (plans) => {
        expect(read(pairsToCsv(plans))).toEqual({ ok: true, pairs: plans, empty: [] });
      }),
    );
  });

  it('over the same pairs on the site it changes nothing, whatever an empty cell means', () => {
    fc.assert(
      fc.property(anyPlans, fc.boolean(), (plans, emptyClears) => {
        expect(read(pairsToCsv(plans), { onSite: plans, emptyClears })).toEqual({
          ok: true,
          pairs: plans,
          empty: [],
        });
      }),
    );
  });

  it('a table in feet reads back the same metres', () => {
    fc.assert(
      fc.property(anyPlans, (plans) => {
        const table = pairsToCsv(plans, 'ft');
        expect(table).toContain(',path_ft,');
        expect(table).not.toContain('path_m');
        expect(read(table)).toEqual({ ok: true, pairs: plans, empty: [] });
      }),
    );
  });

  // csv-parse alone, without anything of ours: what stands in the cells are the figures of the plan.
  it('meter and adjusters stand in it with their full figures', () => {
    const meter = { ...(NEUTRAL_METERS[3] as MeterProfile), name: '=Own', resolution: 1e-7, settleMs: 2500 };
    const adjusters = { name: 'Fine', maxStep: 3, backlash: 0.3, degreesPerTurn: 0.7, travel: 81 };
    const [row] = parse(pairsToCsv([{ id: 'B2', name: 'B2', meter, adjusters }]), { columns: true }) as [
      Record<string, string>,
    ];
    const num = (column: string) => Number(row[column]);
    expect(row).toMatchObject({ meter: "'=Own", meter_unit: 'dB', meter_law: 'logarithmic' });
    expect([num('meter_min'), num('meter_lost_at'), num('meter_band_low')]).toEqual([-60, -40, -6]);
    expect([num('meter_band_high'), num('meter_saturated_at'), num('meter_max')]).toEqual([-3, -0.5, 0]);
    expect([num('meter_resolution'), num('meter_tolerance'), num('meter_db_per_unit')]).toEqual([
      1e-7, 0.2, 1,
    ]);
    expect([num('meter_settle_s'), num('meter_hold_s'), row.meter_gain]).toEqual([2.5, 10, 'continuous']);
    expect([num('adjusters_max_step_turns'), num('adjusters_travel_turns')]).toEqual([0.375, 10.125]);
    expect([num('adjusters_backlash_turns') * 8, num('adjusters_degrees_per_turn')]).toEqual([0.3, 0.7]);
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
