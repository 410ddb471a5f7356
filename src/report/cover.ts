import type { CheckedLog } from '../log/fault.ts';
import type { SiteFinding } from '../model/finding.ts';
import { bySeverity, SEVERITIES } from '../model/finding.ts';
import { PAIR_STATUSES, TROUBLE_FIRST } from '../model/pair-status.ts';
import {
  ACROSS_NOT_SEARCHED,
  ACROSS_NOTHING,
  COVER_ROWS,
  coverSubtitle,
  NO_PAIRS,
  NO_VARIATIONS,
  NOBODY,
  NOT_BEGUN,
  ofPairs,
  onPairs,
  PAIR_COLUMNS,
  pairsText,
  periodText,
  WHAT,
} from '../phrases/cover-page.ts';
import { siteFindingText } from '../phrases/findings.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { heldOnSite, heldOnSiteText } from '../phrases/held.ts';
import { NOT_NAMED } from '../phrases/people.ts';
import { isClear, type Outcome, resultBadge, resultText } from '../phrases/result.ts';
import { footText } from '../phrases/seal.ts';
import { SEVERITY_WORDS } from '../phrases/severities.ts';
import { STATUS_WORDS } from '../phrases/statuses.ts';
import { livePairs, type SitePair, type SiteState } from '../site/state.ts';
import type { Moments } from './moments.ts';
import type { PairPage } from './pair-page.ts';
import { testsText } from './proving.ts';
import { type Block, type Cell, COVER, type Fact, type Item, type Part } from './report.ts';
import { sealBlock } from './seal.ts';
import { outcomeOf } from './standing.ts';

export interface CoverInput {
  readonly log: CheckedLog;
  readonly site: SiteState;
  /** In the order of their pages, which follow the cover. */
  readonly pairs: readonly { readonly pair: SitePair; readonly made: Omit<PairPage, 'part'> }[];
  readonly found: readonly SiteFinding[];
  /** When the report was made, ms. */
  readonly at: number;
}

/** The first part of a site's report: what came of it, and where to look. */
export function coverPage(input: CoverInput, moments: Moments): Part {
  const { log, site, pairs } = input;
  const { fault } = log;
  const outcome = outcomeOf(input, livePairs(site).length, fault !== undefined);
  const clear = isClear(outcome);
  return {
    id: COVER,
    title: site.site ?? log.head.job,
    subtitle: coverSubtitle(clear),
    badge: { text: resultBadge(outcome), heed: !clear },
    blocks: [
      {
        kind: 'facts',
        title: HEADINGS.result,
        rows: [...answers(input, outcome, moments), ...aboutReport(input, moments)],
      },
      {
        kind: 'figures',
        items: PAIR_STATUSES.map((status) => ({
          name: STATUS_WORDS[status],
          value: String(outcome.statuses[status]),
          note: ofPairs(pairs.length),
        })),
      },
      pairTable(input),
      {
        kind: 'list',
        title: HEADINGS.variations,
        empty: NO_VARIATIONS,
        items: pairs.flatMap(({ pair, made }) =>
          made.variations.map((text): Item => ({ lead: pair.plan.id, text })),
        ),
      },
      acrossSite(input),
      sealBlock(HEADINGS.siteLog, log.head, fault, log.key),
    ],
    foot: footText(log.head),
  };
}

/** Result, what, who and when. */
function answers({ pairs }: CoverInput, outcome: Outcome, moments: Moments): Fact[] {
  const spans = pairs.flatMap(({ made }) => (made.span ? [made.span] : []));
  const from = Math.min(...spans.map(([at]) => at));
  const to = Math.max(...spans.map(([, at]) => at));
  return [
    { name: COVER_ROWS.result, value: resultText(outcome) },
    { name: COVER_ROWS.what, value: WHAT },
    { name: COVER_ROWS.who, value: peopleText(pairs.map(({ made }) => made.signers)) || NOBODY },
    { name: COVER_ROWS.crew, value: peopleText(pairs.map(({ made }) => made.crew)) || NOT_NAMED },
    {
      name: COVER_ROWS.when,
      value:
        spans.length === 0 ? NOT_BEGUN : periodText(moments.day(from), moments.day(to), moments.zone(to)),
    },
  ];
}

/** Each of these people, and on how many pairs. */
function peopleText(byPair: readonly (readonly string[])[]): string {
  const pairs = new Map<string, number>();
  for (const people of byPair) {
    for (const person of new Set(people)) pairs.set(person, (pairs.get(person) ?? 0) + 1);
  }
  return [...pairs].map(([person, count]) => onPairs(person, count)).join('; ');
}

const isPart = ({ site, pairs }: CoverInput): boolean => pairs.length < livePairs(site).length;

/** Findings of each severity on one pair: of its latest visit, and of the site. */
const countsOn = ({ pair, made }: CoverInput['pairs'][number], found: CoverInput['found']): number[] =>
  SEVERITIES.map(
    (severity) =>
      made.findings[severity] +
      found.filter((each) => each.pair === pair.plan.id && each.severity === severity).length,
  );

/** What the report covers, and by what it judges. */
function aboutReport(input: CoverInput, moments: Moments): Fact[] {
  const { site, pairs, found, at } = input;
  const counts = pairs.map((one) => countsOn(one, found));
  const findings = SEVERITIES.map((severity, i) => {
    const total = counts.reduce((sum, on) => sum + (on[i] ?? 0), 0);
    return `${total} ${SEVERITY_WORDS[severity].toLowerCase()}`;
  });
  const all = isPart(input) ? livePairs(site).length : undefined;
  const dropped = [...site.pairs.values()].filter((pair) => pair.dropped).length;
  return [
    { name: COVER_ROWS.made, value: moments.full(at) },
    { name: COVER_ROWS.pairs, value: pairsText(pairs.length, all, dropped) },
    { name: COVER_ROWS.findings, value: findings.join(', ') },
    {
      name: COVER_ROWS.guidance,
      value: heldOnSiteText(
        heldOnSite(
          site.code,
          pairs.map(({ made }) => made.held),
        ),
      ),
    },
  ];
}

function pairTable({ pairs, found }: CoverInput): Block {
  const rows = TROUBLE_FIRST.flatMap((status) =>
    pairs.flatMap((one): Cell[][] => {
      const { pair, made } = one;
      if (made.status !== status) return [];
      const findings = countsOn(one, found).join(' / ');
      const { id, name } = pair.plan;
      const tests = made.tests ? testsText(made.tests) : '';
      return [
        [{ text: id, part: id }, name, STATUS_WORDS[status], tests, made.final, findings, { pageOf: id }],
      ];
    }),
  );
  return {
    kind: 'table',
    title: HEADINGS.pairs,
    columns: [
      { name: PAIR_COLUMNS.pair, share: 3 },
      { name: PAIR_COLUMNS.name, share: 5 },
      { name: PAIR_COLUMNS.status, share: 4 },
      { name: PAIR_COLUMNS.tests, share: 5 },
      { name: PAIR_COLUMNS.final, share: 3 },
      { name: PAIR_COLUMNS.findings, share: 4 },
      { name: PAIR_COLUMNS.page, share: 2 },
    ],
    empty: NO_PAIRS,
    rows,
  };
}

function acrossSite(input: CoverInput): Block {
  const items = bySeverity(input.found).map(
    (each): Item => ({
      lead: SEVERITY_WORDS[each.severity],
      text: siteFindingText(each, input.site.units),
    }),
  );
  return {
    kind: 'list',
    title: HEADINGS.acrossSite,
    empty: isPart(input) ? ACROSS_NOT_SEARCHED : ACROSS_NOTHING,
    items,
  };
}
