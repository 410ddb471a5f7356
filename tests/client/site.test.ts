import { describe, expect, it } from 'vitest';
import { matching, totals, troubleFirst, type WarnedRow, withWarnings } from '../../client/board/rows.ts';
import { findingLines } from '../../client/board/site-findings.tsx';
import { memoryStorage } from '../../client/browser/storage.ts';
import { parsePlan, planDraft } from '../../client/planning/plan-draft.ts';
import { forgetSite, savedSites, saveSite, troubledSitesFirst } from '../../client/saved/saved-sites.ts';
import { liveRows, troubledCount, troubledVisitsFirst } from '../../client/site/live-rows.ts';
import { withRowsKept } from '../../client/site/use-site.ts';
import { BOX, drawnSignature, inBox, type Point, simplified } from '../../client/visit/strokes.ts';
import { lostText } from '../../client/visit/visits.tsx';
import { Signature } from '../../src/model/facts.ts';
import { PairPlan } from '../../src/model/pair-plan.ts';
import { PAIR_STATUSES, TROUBLE_FIRST } from '../../src/model/pair-status.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { Units } from '../../src/model/units.ts';
import { whoIsOn } from '../../src/phrases/presence.ts';
import type { PairRow, SiteView } from '../../src/protocol/site.ts';
import { changesBy } from '../../src/site/plan-changes.ts';

const PLAN: PairPlan = {
  id: 'B2',
  name: 'North aisle 2',
  zone: '7',
  pathLength: 62,
  emitterHeight: 9.4,
  receiverHeight: 9.4,
  ceilingHeight: 9.9,
  spacing: 14,
  wallDistance: 7,
  meter: NEUTRAL_METERS[1] as MeterProfile,
  adjusters: NEUTRAL_ADJUSTERS,
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 15,
  filterPercent: 50,
  filters: [20, 60],
  rangeMin: 5,
  rangeMax: 100,
  beamAngle: 1.5,
  leastSignal: 100,
  mostLoss: 3,
};

const rowOf = (patch: Partial<PairRow> = {}, plan: Partial<PairPlan> = {}): PairRow => ({
  plan: { ...PLAN, ...plan },
  visits: [],
  status: 'not-started',
  online: { panel: false, emitter: false },
  next: 'Begin a visit',
  findings: { serious: 0, question: 0, note: 0 },
  ...patch,
});

describe('the sites a device knows', () => {
  it('are kept newest first, each token once, and keep the read-only token once it was seen', () => {
    const storage = memoryStorage();
    saveSite(storage, { token: 'a', site: 'Tamsin Quay', watch: 'w' });
    saveSite(storage, { token: 'b', site: 'Hollin Bridge' });
    saveSite(storage, { token: 'a', site: 'Tamsin Quay, hall 3' });
    expect(savedSites(storage)).toEqual([
      { token: 'a', site: 'Tamsin Quay, hall 3', watch: 'w' },
      { token: 'b', site: 'Hollin Bridge' },
    ]);
    forgetSite(storage, 'a');
    expect(savedSites(storage).map(({ token }) => token)).toEqual(['b']);
  });

  it('stand with those in trouble first, and say when that was seen', () => {
    const storage = memoryStorage();
    saveSite(storage, { token: 'a', site: 'Tamsin Quay', troubled: 2, seenAt: 60_000 });
    saveSite(storage, { token: 'b', site: 'Hollin Bridge', troubled: 0, seenAt: 60_000 });
    saveSite(storage, { token: 'c', site: 'Quayside' });
    const sites = troubledSitesFirst(savedSites(storage));
    expect(sites.map(({ token }) => token)).toEqual(['a', 'c', 'b']);
    expect(sites[0]).toMatchObject({ troubled: 2, seenAt: 60_000 });
    // What this device saw is kept while it only opens one visit.
    saveSite(storage, { token: 'a', site: 'Tamsin Quay' });
    expect(savedSites(storage)[0]).toMatchObject({ token: 'a', troubled: 2 });
  });

  it('are still read when something else is among them', () => {
    const storage = memoryStorage();
    storage.write('sites', [null, { token: 3 }, { token: 'a', site: 'Tamsin Quay' }]);
    expect(savedSites(storage)).toEqual([{ token: 'a', site: 'Tamsin Quay' }]);
    storage.write('sites', 'from an older version');
    expect(savedSites(storage)).toEqual([]);
  });
});

describe('the board', () => {
  const rows = [
    rowOf({ status: 'signed' }, { id: 'N1', name: 'North aisle 1' }),
    rowOf(
      { status: 'aligning', next: 'Horizontal ¼ clockwise' },
      { id: 'S1', name: 'South aisle 1', zone: '2' },
    ),
    rowOf({ dropped: { at: 5, reason: 'Never built' } }, { id: 'X1' }),
  ];
  const ids = (rows: readonly PairRow[]) => rows.map(({ plan }) => plan.id);
  const found = (listed: readonly WarnedRow[]) => ids(listed.map(({ row }) => row));

  it('leaves out what was taken out of the site', () => {
    expect(ids(liveRows(rows))).toEqual(['N1', 'S1']);
  });

  it('finds a pair by id, name, zone and next step, when all words match', () => {
    const find = (words: string) =>
      found(matching(withWarnings(liveRows(rows), {}), { words, status: 'all' }));
    expect(find('north')).toEqual(['N1']);
    expect(find('aisle zone 2')).toEqual(['S1']);
    expect(find('clockwise')).toEqual(['S1']);
    expect(find('south north')).toEqual([]);
    expect(find('  ')).toEqual(['N1', 'S1']);
  });

  it('shows only one status when asked to, and counts each status', () => {
    expect(found(matching(withWarnings(rows, {}), { words: '', status: 'signed' }))).toEqual(['N1']);
    expect(totals(liveRows(rows))).toMatchObject({ signed: 1, aligning: 1, 'not-started': 0 });
  });

  it('lists trouble first, and otherwise keeps the order of the site', () => {
    const serious = { serious: 1, question: 0, note: 0 };
    const mixed = [
      rowOf({ status: 'signed' }, { id: 'calm' }),
      rowOf({ status: 'aligned', findings: serious }, { id: 'serious' }),
      rowOf({ status: 'isolated' }, { id: 'isolated' }),
      rowOf({}, { id: 'new' }),
      rowOf({}, { id: 'too-long', pathLength: 120, rangeMax: 100 }),
      rowOf({ status: 'needs-attention' }, { id: 'attention' }),
    ];
    expect(found(troubleFirst(withWarnings(mixed, {})))).toEqual([
      'attention',
      'serious',
      'isolated',
      'too-long',
      'calm',
      'new',
    ]);
    expect([...TROUBLE_FIRST].sort()).toEqual([...PAIR_STATUSES].sort());
  });

  it('lists the visits in trouble first, and otherwise the newest', () => {
    const visits = [
      { job: 'first-visit', at: 1, status: 'signed' },
      { job: 'second-visit', at: 2, status: 'isolated' },
      { job: 'third-visit', at: 3 },
      { job: 'fourth-visit', at: 4, status: 'needs-attention' },
      { job: 'fifth-visit', at: 5, status: 'signed' },
    ] as const;
    expect(troubledVisitsFirst([...visits]).map(({ at }) => at)).toEqual([4, 2, 5, 3, 1]);
  });

  it('counts pairs in trouble only when every record was read', () => {
    const serious = { serious: 1, question: 0, note: 0 };
    const read = [
      rowOf({ status: 'signed' }),
      rowOf({ status: 'signed', findings: serious }),
      rowOf({ status: 'isolated' }),
      rowOf({ status: 'needs-attention' }),
      rowOf({ status: 'needs-attention', dropped: { at: 5, reason: 'Never built' } }),
    ];
    expect(troubledCount(read)).toBe(3);
    const { status: _, ...unread } = rowOf({});
    expect(troubledCount([...read, unread])).toBeUndefined();
    expect(troubledCount([])).toBe(0);
  });

  it('says who is at a pair', () => {
    expect(whoIsOn(rowOf({ online: { panel: true, emitter: true } }))).toBe('panel and emitter');
    expect(whoIsOn(rowOf({ online: { panel: false, emitter: true } }))).toBe('emitter');
    expect(whoIsOn(rowOf())).toBe('nobody');
  });

  it('keeps a row that has not changed, so that only new rows are drawn', () => {
    const view = (pairs: PairRow[]): SiteView => ({
      head: { job: 'site-log', count: 3, hash: '0'.repeat(64) },
      site: 'Tamsin Quay',
      role: 'desk',
      pairs,
    });
    const before = view([rowOf({}, { id: 'N1' }), rowOf({}, { id: 'N2' })]);
    const after = withRowsKept(
      view([rowOf({}, { id: 'N1' }), rowOf({ status: 'aligning' }, { id: 'N2' })]),
      before,
    );
    expect(after.pairs[0]).toBe(before.pairs[0]);
    expect(after.pairs[1]).not.toBe(before.pairs[1]);
    expect(after.pairs[1]?.status).toBe('aligning');
  });

  it('shows the findings of the latest visits, the most serious first', () => {
    const pairs = [
      rowOf({
        visits: [
          { job: 'old', at: 1 },
          { job: 'new', at: 2 },
        ],
      }),
    ];
    const finding = { entries: [], figures: {}, about: [] };
    const lines = findingLines(
      {
        perPair: [
          { pair: 'B2', job: 'old', findings: [{ id: 'open-issue', severity: 'serious', ...finding }] },
          {
            pair: 'B2',
            job: 'new',
            findings: [
              { id: 'drift', severity: 'question', ...finding },
              { id: 'not-accepted', severity: 'serious', ...finding },
            ],
          },
        ],
        site: [],
      },
      pairs,
    );
    expect(lines.map(({ severity }) => severity)).toEqual(['serious', 'question']);
  });
});

describe('the plan form', () => {
  it('gives every figure of a plan back as it was', () => {
    expect(parsePlan(planDraft(PLAN))).toEqual({ plan: PLAN, known: PLAN, errors: {} });
    // Nothing of the plan is left off the form.
    expect(Object.keys(PLAN).sort()).toEqual(Object.keys(PairPlan.shape).sort());
  });

  it('leaves out what is not known', () => {
    expect(parsePlan(planDraft({ id: 'B2', name: 'B2' })).plan).toEqual({ id: 'B2', name: 'B2' });
  });

  it('takes a decimal comma, and names a pair without a name by its id', () => {
    expect(parsePlan({ ...planDraft(), id: 'B2', pathLength: '62,5' }).plan).toMatchObject({
      id: 'B2',
      name: 'B2',
      pathLength: 62.5,
    });
  });

  it('says beside each bad field what to enter, and still knows the others', () => {
    const { plan, known, errors } = parsePlan({
      ...planDraft(PLAN),
      id: 'north 2',
      pathLength: '450',
      spacing: 'wide',
      alarmThreshold: '100',
    });
    expect(plan).toBeUndefined();
    expect(errors).toEqual({
      id: expect.stringMatching(/no spaces/),
      pathLength: 'From 1 to 300 m.',
      spacing: expect.stringMatching(/^Enter a length, such as 62.5/),
      alarmThreshold: 'Above 0, and below 100 percent.',
    });
    expect(known).toMatchObject({ wallDistance: 7, ceilingHeight: 9.9 });
  });

  it('does not replace a pair that exists with a new one', () => {
    expect(parsePlan(planDraft(PLAN), ['B2']).errors.id).toMatch(/B2 already/);
  });

  describe('where feet and percent per foot are read', () => {
    const FEET: Units = { length: 'ft', loss: 'percent/ft' };
    const plan: PairPlan = { ...PLAN, pathLength: 62, alarmThreshold: { unit: 'percent', value: 35 } };

    it('shows them, and a field that nobody touched keeps its figure exactly', () => {
      const draft = planDraft(plan, FEET);
      expect(draft).toMatchObject({ pathLength: '203.4', alarmThreshold: '0.2116', alarmUnit: 'percent/ft' });
      expect(parsePlan(draft).plan).toEqual(plan);
      expect(parsePlan({ ...draft, name: 'South' }).plan).toEqual({ ...plan, name: 'South' });
    });

    it('takes feet, and the other unit where it is named', () => {
      const draft = planDraft(plan, FEET);
      expect(parsePlan({ ...draft, pathLength: '200' }).plan?.pathLength).toBe(60.96);
      expect(parsePlan({ ...draft, pathLength: '61 m' }).plan?.pathLength).toBe(61);
      expect(parsePlan({ ...draft, spacing: '45 ft 6 in' }).plan?.spacing).toBe(13.8684);
    });

    it('what is told for each foot is of the path that stands beside it', () => {
      const draft = { ...planDraft(plan, FEET), pathLength: '100' };
      const { plan: changed } = parsePlan(draft);
      // 100 ft at 0.2116 % each: 10 * 100 * -log10(1 - 0.002116) dB.
      expect(changed?.alarmThreshold?.unit).toBe('dB');
      expect(changed?.alarmThreshold?.value).toBeCloseTo(-1000 * Math.log10(1 - 0.002116), 5);
      expect(parsePlan({ ...draft, pathLength: '' }).errors.alarmThreshold).toMatch(
        /length of the path first/,
      );
    });

    it('says the limits in feet, rounded so that both are allowed', () => {
      const draft = planDraft(plan, FEET);
      expect(parsePlan({ ...draft, pathLength: '985' }).errors.pathLength).toBe('From 3.29 to 984.25 ft.');
      expect(parsePlan({ ...draft, pathLength: '3.29' }).errors).toEqual({});
      expect(parsePlan({ ...draft, pathLength: '984.25' }).errors).toEqual({});
      expect(parsePlan({ ...draft, pathLength: '3.28' }).errors.pathLength).toBeDefined();
      expect(parsePlan({ ...draft, pathLength: '984.26' }).errors.pathLength).toBeDefined();
    });
  });

  it('notices a range whose limits are swapped', () => {
    expect(parsePlan({ ...planDraft(PLAN), rangeMin: '100', rangeMax: '5' }).errors.rangeMax).toMatch(
      /shorter/,
    );
  });
});

describe('a table before it is sent', () => {
  it('says for each pair what it would change on the site', () => {
    const rows = [
      rowOf({}, { id: 'A' }),
      rowOf({}, { id: 'B' }),
      rowOf({ dropped: { at: 1, reason: 'x' } }, { id: 'C' }),
    ];
    // Keys in another order are the same plan.
    const { name, ...rest } = PLAN;
    const pairs = [
      { ...rest, name, id: 'A' },
      { ...PLAN, id: 'B', pathLength: 63 },
      { ...PLAN, id: 'C' },
      { ...PLAN, id: 'D' },
    ];
    expect(changesBy(pairs, rows).map(({ plan, kind }) => [plan.id, kind])).toEqual([
      ['A', 'same'],
      ['B', 'changed'],
      ['C', 'back'],
      ['D', 'new'],
    ]);
  });
});

describe('a drawn signature', () => {
  it('keeps the corners of a stroke and leaves out points on straight lines', () => {
    const along: Point[] = Array.from({ length: 50 }, (_, i) => [i * 10, 100]);
    const down: Point[] = Array.from({ length: 20 }, (_, i) => [490, 100 + i * 10]);
    expect(simplified([...along, ...down])).toEqual([
      [0, 100],
      [490, 100],
      [490, 290],
    ]);
  });

  it('stays within two units of what was drawn', () => {
    const circle: Point[] = Array.from({ length: 200 }, (_, i) => [
      Math.round(500 + 150 * Math.cos(i / 20)),
      Math.round(200 + 150 * Math.sin(i / 20)),
    ]);
    const kept = simplified(circle);
    expect(kept.length).toBeLessThan(60);
    for (const [x, y] of kept) expect(Math.abs(Math.hypot(x - 500, y - 200) - 150)).toBeLessThan(1.5);
  });

  it('stays in its box, even when the finger left it', () => {
    expect(inBox(-5, 900, 300, 120)).toEqual([0, BOX.height]);
    expect(inBox(150, 60, 300, 120)).toEqual([500, 200]);
  });

  it('fits the log; a slip of the finger is no signature', () => {
    const scribble: Point[] = Array.from({ length: 3000 }, (_, i) => [i % 1000, (i * 37) % 400]);
    expect(
      drawnSignature([
        [
          [10, 10],
          [14, 12],
        ],
      ]),
    ).toBeUndefined();
    const drawn = drawnSignature([
      [
        [0, 0],
        [500, 200],
        [900, 380],
      ],
      [[40, 40]],
    ]);
    expect(Signature.safeParse(drawn).success).toBe(true);
    // More than a log takes is refused here, not at the server.
    expect(drawnSignature([scribble])).toBeUndefined();
  });
});

describe('how a reading has changed since the last visit', () => {
  it.each([
    [0.62, '0.6 dB'],
    [0.01, 'none'],
    [-0.9, 'none: 0.9 dB more than before'],
    [Number.POSITIVE_INFINITY, 'all of it'],
    [undefined, 'these two readings do not show it'],
  ])('%s dB lost is shown as "%s"', (db, text) => {
    expect(lostText(db)).toBe(text);
  });
});
