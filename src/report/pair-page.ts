import { alongAxis } from '../charts/along.ts';
import { timeScene } from '../charts/time-scene.ts';
import { turnsScene } from '../charts/turns-scene.ts';
import type { VisitOutcome } from '../findings/outcome.ts';
import type { CheckedLog } from '../log/fault.ts';
import { topOf } from '../log/series.ts';
import { hasNoNumbers } from '../model/alone.ts';
import { CHECKLISTS, type Checklist } from '../model/checklists.ts';
import type { SiteFinding } from '../model/finding.ts';
import { bySeverity, isPlanChanged, SEVERITIES, type Severity } from '../model/finding.ts';
import type { Guidance } from '../model/guidance.ts';
import type { Head } from '../model/ids.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { PairStatus } from '../model/pair-status.ts';
import type { JobSetup } from '../model/setup.ts';
import { AXES, type Axis } from '../model/turns.ts';
import { METRES, type Units } from '../model/units.ts';
import { isUpkeep } from '../model/upkeep.ts';
import { PLAN_CHANGED } from '../phrases/board.ts';
import { THE_LOG } from '../phrases/counts.ts';
import { answeredForText, overrideText } from '../phrases/cover-page.ts';
import { DAMAGED_NEXT } from '../phrases/damage.ts';
import { findingText, siteFindingText } from '../phrases/findings.ts';
import { gainChange } from '../phrases/gain.ts';
import { variationText } from '../phrases/hand-over.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { heldText } from '../phrases/held.ts';
import { askItem, itemText } from '../phrases/items.ts';
import {
  A_PHONE,
  againstOthers,
  aloneEvidenceText,
  bandText,
  closedText,
  FIGURE_NAMES,
  foundAgainText,
  issueText,
  JOB_ROWS,
  LEADS,
  LOG_BROKEN,
  moreSeats,
  NO_FINDINGS,
  NO_ISSUES,
  NO_LOG,
  NO_PEAK,
  NO_PEAK_NOTE,
  NO_RECORD_SUBTITLE,
  NO_RECORD_TITLE,
  NONE,
  NOT_ACCEPTED,
  NOT_KNOWN,
  notAnswered,
  PEAK_NAMES,
  pairSubtitle,
  pairTitle,
  peakNote,
  remarkText,
  seriousCount,
  startText,
  TOOK_OVER,
  VISIT_COLUMNS,
} from '../phrases/pair-page.ts';
import { personText } from '../phrases/people.ts';
import { planWarnings, WARNINGS_TITLE } from '../phrases/plan-warnings.ts';
import { NO_WARNINGS } from '../phrases/plan-warnings-desk.ts';
import { positionText } from '../phrases/position.ts';
import { failedFirst } from '../phrases/proving-table.ts';
import { FINAL_AS, finalText, readingText, readingWithUnit } from '../phrases/readings.ts';
import { footText } from '../phrases/seal.ts';
import { SEVERITY_WORDS } from '../phrases/severities.ts';
import { STATUS_WORDS } from '../phrases/statuses.ts';
import { duration } from '../phrases/times.ts';
import { lengthText, shownFor } from '../phrases/units.ts';
import { type Held, heldPlan, heldSetup } from '../plan/held.ts';
import { driftBetween } from '../record/last-visit.ts';
import type { Overview } from '../record/overview.ts';
import { visitOutcome } from '../record/visit-outcome.ts';
import { VisitRecord } from '../record/visit-record.ts';
import { answerTo, type Commission, isCommissioning, isPeriodic } from '../visit/commission.ts';
import { testAnswer } from '../visit/progress.ts';
import { retestsOf } from '../visit/retests.ts';
import { searchOf } from '../visit/search.ts';
import type { Visit } from '../visit/visit.ts';
import { brief, entryList } from './brief.ts';
import { handOverBlock } from './hand-over.ts';
import { historyBlocks } from './history.ts';
import type { Moments } from './moments.ts';
import { namedEntries } from './named-entries.ts';
import { periodicBlocks } from './periodic.ts';
import { photoBlocks } from './photos.ts';
import { planRows } from './plan-rows.ts';
import { provingBlock, type TestsOutcome, testsOutcome } from './proving.ts';
import type { Block, Fact, Figure, Item, Part } from './report.ts';
import { sealBlock } from './seal.ts';
import { signBlocks } from './sign-block.ts';
import { stepsBlock } from './steps.ts';

/** A pair with the log of every visit, oldest first. Without a site: one visit and no plan. */
export interface PairLogs {
  readonly plan?: PairPlan;
  readonly visits: readonly CheckedLog[];
  /** Those of the site; without a site, or if it names none, those of the visit. */
  readonly units?: Units | undefined;
  /** What the plan is held against while no visit has begun. */
  readonly code?: Guidance | undefined;
}

/** A pair's page, and what the cover says about it. */
export interface PairPage {
  readonly part: Part;
  readonly status: PairStatus;
  readonly final: string;
  readonly findings: Readonly<Record<Severity, number>>;
  /** The log fails its check. */
  readonly broken: boolean;
  /** Undefined where no visit was made, or a broken log proves nothing. */
  readonly tests?: TestsOutcome;
  /** Who signed, while the signatures hold, and who sat at panel and emitter: as they called themselves. */
  readonly signers: readonly string[];
  readonly crew: readonly string[];
  /** Times of the first and the last entry of the work, over all visits, ms. */
  readonly span?: readonly [from: number, to: number];
  /** What was accepted although it is not as it should be, and who says why. */
  readonly variations: readonly string[];
  /** What was held against the guidance; undefined where none is named. */
  readonly held: Held | undefined;
  /** Only visits with an unbroken log. */
  readonly visits: readonly Visit[];
}

/** Chart sizes, pixels: two side by side are as wide as one alone. */
const HALF = 340;
const WHOLE = 690;
const PLOT = 120;
const TIME_PLOT = 140;

/** A visit's record, and where its log ends. */
interface Read {
  readonly record: VisitRecord;
  readonly head: Head;
  readonly key: CheckedLog['key'];
}

const read = (log: CheckedLog): Read => ({
  record: new VisitRecord(log, { fault: log.fault }),
  head: log.head,
  key: log.key,
});

/** The page of a pair by its latest visit. */
export function pairPage({ plan, visits, units, code }: PairLogs, moments: Moments): PairPage {
  const records = visits.map(read);
  const latest = records.at(-1);
  if (!latest?.record.visit) return withoutVisit({ plan, log: latest, units, code });
  const { record, head, key } = latest;
  const { visit, fault, status, findings, final, overview, series } = record as VisitRecord & {
    visit: Visit;
  };
  const commission: Commission = {
    ...visit.commission,
    setup: { ...visit.commission.setup, ...(units && { units }) },
  };
  const { setup } = commission;
  const { meter } = setup;
  const counts = Object.fromEntries(
    SEVERITIES.map((severity) => [severity, findings.filter((each) => each.severity === severity).length]),
  ) as Record<Severity, number>;
  const retested = retestsOf(commission, record.progress).map(({ test, failed, at }) => ({
    seq: failed,
    at,
    text: failedFirst(test),
  }));
  const blocks: Block[] = [
    { kind: 'figures', items: figures(visit, record, moments) },
    ...periodicBlocks(visit, moments),
    provingBlock(commission, record.progress),
    {
      kind: 'list',
      title: HEADINGS.findings,
      empty: NO_FINDINGS,
      items: bySeverity(findings).map((finding) => ({
        lead: SEVERITY_WORDS[finding.severity],
        text: `${findingText(finding, shownFor(setup))} (${entryList(finding.entries)})`,
      })),
    },
    issuesAndRemarks(visit, moments),
    ...(setup.steps ? [stepsBlock(setup, record.state.handOver)] : []),
    handOverBlock(record.state.handOver, setup),
    ...photoBlocks(record.state.photos, head.job, moments),
    ...(plan ? historyBlocks(outcomesOf(records), plan, moments) : []),
    ...earlierVisits(records, moments),
    jobBlock(setup, overview, commission, moments),
    ...signBlocks(record, moments),
    sealBlock(HEADINGS.record, head, fault, key),
    // Where nobody read a number there is nothing to draw.
    ...(hasNoNumbers(setup.alone)
      ? []
      : [
          {
            kind: 'charts' as const,
            charts: AXES.map((axis) =>
              turnsScene(series, alongAxis(series, searchOf(record.state), axis), axis, meter, HALF, PLOT),
            ),
          },
          {
            kind: 'charts' as const,
            charts: [
              timeScene(series, series, meter, moments, WHOLE, { plotHeight: TIME_PLOT, notes: retested }),
            ],
          },
        ]),
  ];
  const { signed, beside, changedBy } = record.state;
  const broken = records.some(({ record: { fault } }) => fault !== undefined);
  const stands = broken ? 'needs-attention' : status;
  const times = records.flatMap(({ record: { entries } }) =>
    entries.filter(({ fact }) => !isUpkeep(fact)).map(({ at }) => at),
  );
  return {
    part: {
      id: plan?.id ?? head.job,
      title: plan ? pairTitle({ id: plan.id, name: setup.pair }) : setup.pair,
      subtitle: pairSubtitle(setup.site, isPeriodic(commission)),
      badge: pairBadge(stands, broken, counts.serious),
      blocks: [...blocks, ...namedEntries(blocks, record.entries, meter, moments)],
      foot: footText(head),
    },
    status: stands,
    final: final && !fault ? finalText(final, meter) : '',
    findings: counts,
    broken,
    ...(isCommissioning(commission) && !fault && { tests: testsOutcome(commission, record.progress) }),
    signers:
      signed && changedBy === undefined && !fault
        ? [signed, ...beside].map((one) => `${personText(one)}, ${one.role}`)
        : [],
    crew: overview.people.flatMap(({ person }) => (person && !fault ? [personText(person)] : [])),
    ...(times.length > 0 && {
      span: [times.reduce((a, b) => Math.min(a, b)), times.reduce((a, b) => Math.max(a, b))] as const,
    }),
    variations: variationsOf(visit, record),
    held: heldSetup(setup),
    // A broken log is not compared with any other.
    visits: records.flatMap(({ record: { visit, fault } }) => (visit && !fault ? [visit] : [])),
  };
}

const HEED: ReadonlySet<PairStatus> = new Set(['needs-attention', 'not-started', 'signed-not-proven']);

/** The status, and what is worse than it. */
const pairBadge = (
  status: PairStatus,
  broken: boolean,
  serious: number,
  planChanged = false,
): Part['badge'] => ({
  text: [
    ...(broken ? [LOG_BROKEN] : []),
    STATUS_WORDS[status],
    ...(planChanged ? [PLAN_CHANGED] : []),
    ...(serious > 0 ? [seriousCount(serious)] : []),
  ].join('; '),
  heed: HEED.has(status) || broken || serious > 0,
});

/** Overrides, and failures that somebody answered for instead of testing again. */
function variationsOf({ end, commission }: Visit, { progress }: VisitRecord): string[] {
  const override = end.accepted?.override;
  const failed = [
    ...Object.values(progress.last).flatMap(({ attempt, verdict }) =>
      verdict.kind === 'failed' ? [attempt.covered.seq] : [],
    ),
    ...CHECKLISTS.tests.flatMap((item) => {
      const answer = testAnswer(commission, item);
      return answer && !answer.done ? [answer.seq] : [];
    }),
  ];
  return [
    ...end.handOver.variations
      .filter(({ struck }) => !struck)
      .map(({ what, agreedWith }) => variationText(what, agreedWith)),
    ...(override ? [overrideText(override.reason)] : []),
    ...end.issues.flatMap(({ about, text, closed }) =>
      closed && failed.includes(about) ? [answeredForText(text, closed.how)] : [],
    ),
  ];
}

/** A pair's part, with the findings added that only show against the site's other pairs. */
export function withSiteFindings(
  { part, status, broken, findings }: PairPage,
  found: readonly SiteFinding[],
  units?: Units,
): Part {
  if (found.length === 0) return part;
  const serious = findings.serious + found.filter(({ severity }) => severity === 'serious').length;
  const items = found.map(
    (finding): Item => ({
      lead: SEVERITY_WORDS[finding.severity],
      text: againstOthers(siteFindingText(finding, units)),
    }),
  );
  const blocks = part.blocks.map((block) =>
    block.kind === 'list' && block.title === HEADINGS.findings
      ? { ...block, items: [...items, ...block.items] }
      : block,
  );
  return { ...part, badge: pairBadge(status, broken, serious, isPlanChanged(found)), blocks };
}

/** Nothing can be said of a visit: none was begun, or its log is lost. */
function withoutVisit({
  plan,
  log,
  units = METRES,
  code,
}: Pick<PairLogs, 'units' | 'code'> & {
  readonly plan: PairPlan | undefined;
  readonly log: Read | undefined;
}): PairPage {
  const fault = log?.record.fault;
  const status = fault ? 'needs-attention' : 'not-started';
  const seal = log && sealBlock(HEADINGS.record, log.head, fault, log.key);
  const held = plan && heldPlan(plan, code);
  return {
    part: {
      id: plan?.id ?? NO_LOG,
      title: plan ? pairTitle(plan) : NO_RECORD_TITLE,
      subtitle: fault ? DAMAGED_NEXT : NO_RECORD_SUBTITLE,
      badge: pairBadge(status, fault !== undefined, 0),
      blocks: [...(fault && seal ? [seal] : []), ...(plan ? plannedBlocks(plan, held, { units, code }) : [])],
      foot: log ? footText(log.head) : NO_LOG,
    },
    status,
    final: '',
    findings: { serious: 0, question: 0, note: 0 },
    broken: fault !== undefined,
    signers: [],
    crew: [],
    variations: [],
    held,
    visits: [],
  };
}

/** A plan that no visit has begun with: what it says, and what the check warns of. */
const plannedBlocks = (
  plan: PairPlan,
  held: Held | undefined,
  { units, code }: { readonly units: Units; readonly code: Guidance | undefined },
): Block[] => [
  {
    kind: 'facts',
    title: HEADINGS.planned,
    rows: [...planRows(plan, shownFor({ units, plan })), { name: JOB_ROWS.guidance, value: heldText(held) }],
  },
  {
    kind: 'list',
    title: WARNINGS_TITLE,
    empty: NO_WARNINGS,
    items: planWarnings(plan, code, units).map((text): Item => ({ lead: LEADS.warning, text })),
  },
];

function figures(
  { commission }: Visit,
  { state, final, overview, series }: VisitRecord,
  moments: Moments,
): Figure[] {
  const { meter } = commission.setup;
  const { accepted } = state;
  const { from, to } = overview;
  const gain = series.gains.at(-1);
  const peak = (axis: Axis): Figure => {
    const top = topOf(series, axis);
    return {
      name: PEAK_NAMES[axis],
      value: top ? positionText(top.sample.position[axis]) : NO_PEAK,
      note: top ? peakNote(readingText(top.sample.reading, meter), top.sample.seq) : NO_PEAK_NOTE,
    };
  };
  return [
    {
      name: FIGURE_NAMES.final,
      value: final ? readingWithUnit(final.reading, meter) : NONE,
      note: `${final ? `${FINAL_AS[final.as]}, #${final.seq}; ` : ''}${bandText(meter, commission.setup.alone)}`,
    },
    {
      name: accepted?.override ? FIGURE_NAMES.overridden : FIGURE_NAMES.accepted,
      value: accepted ? readingWithUnit(accepted.reading, meter) : NOT_ACCEPTED,
      note: accepted ? `${moments.clock(accepted.at, true)}, #${accepted.seq}` : '',
    },
    {
      name: FIGURE_NAMES.gain,
      value: String(series.gains.length - 1),
      note: gain ? gainChange(gain) : '',
    },
    peak('horizontal'),
    peak('vertical'),
    {
      name: FIGURE_NAMES.duration,
      value: from !== undefined && to !== undefined ? duration(to - from) : '',
      note:
        from === undefined
          ? ''
          : startText(moments.day(from), `${moments.clock(from, false)} ${moments.zone(from)}`),
    },
  ];
}

function issuesAndRemarks({ entries, end }: Visit, moments: Moments): Block {
  const ordered = [
    ...end.issues.filter(({ closed }) => !closed),
    ...end.issues.filter(({ closed }) => closed),
  ];
  const issues = ordered.map(
    ({ seq, text, closed }): Item => ({
      lead: closed ? LEADS.closed : LEADS.open,
      text: issueText(
        text,
        seq,
        closed ? closedText(moments.clock(closed.at, false), closed.seq, closed.how) : '',
      ),
    }),
  );
  const override = end.accepted?.override;
  const overrides: Item[] = override
    ? [{ lead: LEADS.override, text: `${override.reason} (#${end.accepted?.seq})` }]
    : [];
  const remarks = entries.flatMap(({ seq, at, fact }): Item[] =>
    fact.type === 'remark' || fact.type === 'watcher-remark'
      ? [
          {
            lead: LEADS.remark,
            text: remarkText(
              fact.text,
              fact.type === 'remark' ? fact.seat : fact.by,
              moments.clock(at, false),
              seq,
            ),
          },
        ]
      : [],
  );
  return {
    kind: 'list',
    title: HEADINGS.issues,
    empty: NO_ISSUES,
    items: [...overrides, ...issues, ...remarks],
  };
}

/** The final reading of a visit, and the reading found at the next; a broken log proves no reading. */
function foundAgain({ record: { visit, fault } }: Read, next: Read | undefined): string {
  const later = next?.record;
  const drift = visit && later?.visit && !fault && !later.fault && driftBetween(visit, later.visit);
  if (!drift) return NOT_KNOWN;
  const { setup } = visit.commission;
  const [from, to] = [drift.from, drift.to].map((reading) => readingText(reading, setup.meter));
  return foundAgainText(from as string, to as string, drift.lostDb, shownFor(setup));
}

/** A broken log proves no signal. */
const outcomesOf = (records: readonly Read[]): VisitOutcome[] =>
  records.flatMap(({ record: { visit, fault } }) => (visit && !fault && visitOutcome(visit)) || []);

/** The earlier visits, and how the pair was found after each. */
function earlierVisits(records: readonly Read[], moments: Moments): Block[] {
  if (records.length < 2) return [];
  const rows = records.slice(0, -1).map((earlier, index): string[] => {
    const { record, head } = earlier;
    const at = record.entries[0]?.at;
    return [
      at === undefined ? '' : moments.day(at),
      head.job,
      record.visit ? STATUS_WORDS[record.status] : '',
      foundAgain(earlier, records[index + 1]),
    ];
  });
  return [
    {
      kind: 'table',
      title: HEADINGS.earlier,
      columns: [
        { name: VISIT_COLUMNS.day, share: 2 },
        { name: VISIT_COLUMNS.log, share: 3 },
        { name: VISIT_COLUMNS.status, share: 2 },
        { name: VISIT_COLUMNS.found, share: 4 },
      ],
      empty: '',
      rows: rows.toReversed(),
    },
  ];
}

function jobBlock(setup: JobSetup, { people }: Overview, commission: Commission, moments: Moments): Block {
  const seats = people
    .slice(0, 6)
    .map(
      ({ seat, device, at, takeover, person }) =>
        `${seat}: ${personText(person)}, ${brief(device || A_PHONE, 40, THE_LOG)}, ${moments.clock(at, false)}${takeover ? TOOK_OVER : ''}`,
    );
  const more = people.length > 6 ? moreSeats(people.length - 6) : '';
  const path = setup.pathLength ?? setup.plan?.pathLength;
  const shown = shownFor(setup);
  const lists: Fact[] = isCommissioning(commission)
    ? [
        { name: JOB_ROWS.before, value: answers(commission, 'before') },
        { name: JOB_ROWS.after, value: answers(commission, 'after') },
      ]
    : [];
  const rows: Fact[] = [
    { name: JOB_ROWS.crew, value: `${seats.join('; ')}${more}` },
    ...(setup.alone ? [{ name: JOB_ROWS.alone, value: aloneEvidenceText(setup.alone) }] : []),
    ...lists,
    // The plan that the visit was made with: the site's may have changed since.
    ...(setup.plan
      ? planRows(setup.plan, shown)
      : path === undefined
        ? []
        : [{ name: JOB_ROWS.path, value: lengthText(path, shown) }]),
    ...(setup.plan ? [{ name: JOB_ROWS.guidance, value: heldText(heldSetup(setup)) }] : []),
    { name: JOB_ROWS.profiles, value: `${setup.meter.name}; ${setup.adjusters.name}` },
  ];
  return { kind: 'facts', title: HEADINGS.job, rows };
}

const answers = (commission: Commission, list: Checklist): string =>
  CHECKLISTS[list]
    .map((item) => {
      const answer = answerTo(commission, list, item);
      return answer ? `${itemText(answer)} #${answer.seq}` : notAnswered(askItem(item).show);
    })
    .join('; ');
