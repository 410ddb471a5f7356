import { findFault } from '../log/chain.ts';
import type { Log } from '../model/entry.ts';
import type { SiteFinding } from '../model/finding.ts';
import { bySeverity, SEVERITIES } from '../model/finding.ts';
import { PAIR_STATUSES, type PairStatus } from '../model/pair-status.ts';
import { SEVERITY_WORDS, siteFindingText } from '../phrases/findings.ts';
import { GUIDANCE_ONLY } from '../phrases/plan.ts';
import { STATUS_WORDS } from '../phrases/statuses.ts';
import { livePairs, type SitePair, type SiteState } from '../site/state.ts';
import { first, moreInLog } from './brief.ts';
import type { Moments } from './moments.ts';
import type { PairPage } from './pair-page.ts';
import type { Block, Item, Page } from './report.ts';
import { footOf, sealBlock } from './seal.ts';

/** The pairs a cover has room to name. */
const LISTED = 24;
const FINDINGS = 6;

/** Whose page a supervisor turns to first. */
const ORDER: readonly PairStatus[] = [
  'needs-attention',
  'aligning',
  'aligned',
  'not-started',
  'proven',
  'signed',
];

export interface CoverInput {
  readonly log: Log;
  readonly site: SiteState;
  /** In the order of their pages, which follow the cover. */
  readonly pairs: readonly { readonly pair: SitePair; readonly made: Omit<PairPage, 'page'> }[];
  readonly found: readonly SiteFinding[];
  /** When the report was made, ms. */
  readonly at: number;
}

/** The first sheet of a site's report: its totals, and where to look. */
export function coverPage(input: CoverInput, moments: Moments): Page {
  const { log, site, pairs } = input;
  const count = (status: PairStatus) => pairs.filter(({ made }) => made.status === status).length;
  const all = livePairs(site).length;
  return {
    title: site.site ?? log.head.job,
    subtitle: 'Commissioning report: optical beam smoke detectors',
    badge: isPart(input)
      ? { text: `${pairs.length} of ${counted(all)}`, heed: true }
      : whole(count, pairs.length),
    blocks: [
      {
        kind: 'figures',
        items: PAIR_STATUSES.map((status) => ({
          name: STATUS_WORDS[status],
          value: String(count(status)),
          note: `of ${counted(pairs.length)}`,
        })),
      },
      thisReport(input, moments),
      pairTable(input),
      acrossSite(input),
      sealBlock("The site's log", log.head, findFault(log.entries, log.head)),
    ],
    foot: footOf(log.head),
  };
}

const isPart = ({ site, pairs }: CoverInput): boolean => pairs.length < livePairs(site).length;

/** Findings of each weight on one pair: of its latest visit, and of the site. */
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
  const ofSite = isPart(input) ? ` of the site's ${livePairs(site).length}` : '';
  const dropped = [...site.pairs.values()].filter((pair) => pair.dropped).length;
  const left = dropped > 0 ? `; ${dropped} dropped from the site` : '';
  const { code } = site;
  return {
    kind: 'facts',
    title: 'This report',
    rows: [
      { name: 'Made', value: moments.full(at) },
      { name: 'Pairs', value: `${counted(pairs.length)}${ofSite}, one on each page that follows${left}` },
      { name: 'Findings', value: findings.join(', ') },
      {
        name: 'Guidance',
        value: `${code ? `plans held against ${code.name} (${code.source}); ` : 'none chosen; '}${GUIDANCE_ONLY}`,
      },
    ],
  };
}

function pairTable({ pairs, found }: CoverInput): Block {
  const rows = ORDER.flatMap((status) =>
    pairs.flatMap((one, index) => {
      const { pair, made } = one;
      if (made.status !== status) return [];
      const findings = countsOn(one, found).join(' / ');
      const page = String(index + 2);
      return [[pair.plan.id, pair.plan.name, STATUS_WORDS[status], made.final, findings, page]];
    }),
  );
  return {
    kind: 'table',
    title: 'Pairs',
    columns: [
      { name: 'Pair', share: 3 },
      { name: 'Name', share: 6 },
      { name: 'It stands', share: 4 },
      { name: 'Final reading', share: 3 },
      { name: 'Findings: serious / asked / to know', share: 4 },
      { name: 'Page', share: 2 },
    ],
    empty: 'No pairs are planned.',
    rows: first(rows, LISTED, (left) => [`${left.length} more`, 'each on its page', '', '', '', '']),
  };
}

function acrossSite(input: CoverInput): Block {
  const items = bySeverity(input.found).map((each) => ({
    lead: SEVERITY_WORDS[each.severity],
    text: siteFindingText(each),
  }));
  return {
    kind: 'list',
    title: 'Seen across the site',
    empty: isPart(input)
      ? 'Not looked for beyond these pairs: the report on the whole site tells.'
      : 'Nothing that only shows when its records are held against each other.',
    items: first<Item>(items, FINDINGS, moreInLog),
  };
}

function whole(count: (status: PairStatus) => number, pairs: number): Page['badge'] {
  if (pairs > 0 && count('signed') === pairs) return { text: 'All signed', heed: false };
  const attention = count('needs-attention');
  return { text: attention > 0 ? `Need attention: ${attention}` : 'Not all signed', heed: true };
}

const counted = (pairs: number): string => `${pairs} ${pairs === 1 ? 'pair' : 'pairs'}`;
