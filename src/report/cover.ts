import { findFault } from '../log/chain.ts';
import type { Log } from '../model/entry.ts';
import type { SiteFinding } from '../model/finding.ts';
import { bySeverity, SEVERITIES } from '../model/finding.ts';
import { PAIR_STATUSES, type PairStatus, TROUBLE_FIRST } from '../model/pair-status.ts';
import {
  ACROSS_NOT_SEARCHED,
  ACROSS_NOTHING,
  ALL_SIGNED,
  COVER_ROWS,
  COVER_SUBTITLE,
  guidanceText,
  NO_PAIRS,
  NOT_ALL_SIGNED,
  needAttention,
  ofPairs,
  PAIR_COLUMNS,
  pairsText,
  partOfSite,
} from '../phrases/cover-page.ts';
import { SEVERITY_WORDS, siteFindingText } from '../phrases/findings.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { footText } from '../phrases/seal.ts';
import { STATUS_WORDS } from '../phrases/statuses.ts';
import { livePairs, type SitePair, type SiteState } from '../site/state.ts';
import type { Moments } from './moments.ts';
import type { PairPage } from './pair-page.ts';
import { type Block, type Cell, COVER, type Item, type Part } from './report.ts';
import { sealBlock } from './seal.ts';

export interface CoverInput {
  readonly log: Log;
  readonly site: SiteState;
  /** In the order of their pages, which follow the cover. */
  readonly pairs: readonly { readonly pair: SitePair; readonly made: Omit<PairPage, 'part'> }[];
  readonly found: readonly SiteFinding[];
  /** When the report was made, ms. */
  readonly at: number;
}

/** The first sheet of a site's report: its totals, and where to look. */
export function coverPage(input: CoverInput, moments: Moments): Part {
  const { log, site, pairs } = input;
  const count = (status: PairStatus) => pairs.filter(({ made }) => made.status === status).length;
  const all = livePairs(site).length;
  return {
    id: COVER,
    title: site.site ?? log.head.job,
    subtitle: COVER_SUBTITLE,
    badge: isPart(input) ? { text: partOfSite(pairs.length, all), heed: true } : whole(count, pairs.length),
    blocks: [
      {
        kind: 'figures',
        items: PAIR_STATUSES.map((status) => ({
          name: STATUS_WORDS[status],
          value: String(count(status)),
          note: ofPairs(pairs.length),
        })),
      },
      thisReport(input, moments),
      pairTable(input),
      acrossSite(input),
      sealBlock(HEADINGS.siteLog, log.head, findFault(log.entries, log.head)),
    ],
    foot: footText(log.head),
  };
}

const isPart = ({ site, pairs }: CoverInput): boolean => pairs.length < livePairs(site).length;

/** Findings of each severity on one pair: of its latest visit, and of the site. */
const countsOn = ({ pair, made }: CoverInput['pairs'][number], found: CoverInput['found']): number[] =>
  SEVERITIES.map(
    (severity) =>
      made.findings[severity] +
      found.filter((each) => each.pair === pair.plan.id && each.severity === severity).length,
  );

function thisReport(input: CoverInput, moments: Moments): Block {
  const { site, pairs, found, at } = input;
  const counts = pairs.map((one) => countsOn(one, found));
  const findings = SEVERITIES.map((severity, i) => {
    const total = counts.reduce((sum, on) => sum + (on[i] ?? 0), 0);
    return `${total} ${SEVERITY_WORDS[severity].toLowerCase()}`;
  });
  const all = isPart(input) ? livePairs(site).length : undefined;
  const dropped = [...site.pairs.values()].filter((pair) => pair.dropped).length;
  return {
    kind: 'facts',
    title: HEADINGS.thisReport,
    rows: [
      { name: COVER_ROWS.made, value: moments.full(at) },
      { name: COVER_ROWS.pairs, value: pairsText(pairs.length, all, dropped) },
      { name: COVER_ROWS.findings, value: findings.join(', ') },
      { name: COVER_ROWS.guidance, value: guidanceText(site.code) },
    ],
  };
}

function pairTable({ pairs, found }: CoverInput): Block {
  const rows = TROUBLE_FIRST.flatMap((status) =>
    pairs.flatMap((one): Cell[][] => {
      const { pair, made } = one;
      if (made.status !== status) return [];
      const findings = countsOn(one, found).join(' / ');
      const { id, name } = pair.plan;
      return [[{ text: id, part: id }, name, STATUS_WORDS[status], made.final, findings, { pageOf: id }]];
    }),
  );
  return {
    kind: 'table',
    title: HEADINGS.pairs,
    columns: [
      { name: PAIR_COLUMNS.pair, share: 3 },
      { name: PAIR_COLUMNS.name, share: 6 },
      { name: PAIR_COLUMNS.status, share: 4 },
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
      text: siteFindingText(each),
    }),
  );
  return {
    kind: 'list',
    title: HEADINGS.acrossSite,
    empty: isPart(input) ? ACROSS_NOT_SEARCHED : ACROSS_NOTHING,
    items,
  };
}

function whole(count: (status: PairStatus) => number, pairs: number): Part['badge'] {
  if (pairs > 0 && count('signed') === pairs) return { text: ALL_SIGNED, heed: false };
  const attention = count('needs-attention');
  return { text: attention > 0 ? needAttention(attention) : NOT_ALL_SIGNED, heed: true };
}
