import { reviewSite } from '../findings/across-visits.ts';
import type { PairOutcome } from '../findings/outcome.ts';
import type { CheckedLog } from '../log/fault.ts';
import type { Entry } from '../model/entry.ts';
import { isPlanChanged, type SiteFinding } from '../model/finding.ts';
import type { PairId } from '../model/pair-plan.ts';
import { statusOnSite } from '../record/status.ts';
import { visitOutcome } from '../record/visit-outcome.ts';
import { EMPTY_SITE, foldSite, livePairs, type SitePair } from '../site/state.ts';
import { coverPage } from './cover.ts';
import { type Moments, momentsIn } from './moments.ts';
import { type PairPage, pairPage, withSiteFindings } from './pair-page.ts';
import type { Part } from './report.ts';

/** How a report is requested. */
export interface ReportOptions {
  /** IANA name of the time zone for its times. */
  readonly zone: string;
  /** When it is made, ms. */
  readonly at: number;
  /** Only these pairs. */
  readonly only?: readonly PairId[];
}

/** The report on a single job: one part, without a cover. @throws {RangeError} on an unknown time zone */
export const jobReport = (log: CheckedLog, zone: string): Part[] => [
  pairPage({ visits: [log] }, momentsIn(zone)).part,
];

/** True for the log of a site, which holds no job. */
export const isSiteLog = ({ entries }: { readonly entries: readonly Entry[] }): boolean =>
  entries[0]?.fact.type === 'site-opened';

/**
 * A site's report while it is made: the caller adds the pairs one by one, so that it can do other work
 * between them, and takes the parts at the end.
 */
export class SiteReport {
  readonly #log: CheckedLog;
  readonly #options: ReportOptions;
  readonly #moments: Moments;
  readonly #site;
  readonly #made: { pair: SitePair; made: PairPage; outcome: PairOutcome }[] = [];
  /** The pairs to add, in this order. */
  readonly pairs: readonly SitePair[];

  /** @throws {RangeError} on an unknown time zone */
  constructor(log: CheckedLog, options: ReportOptions) {
    this.#log = log;
    this.#options = options;
    this.#moments = momentsIn(options.zone);
    this.#site = log.entries.reduce(foldSite, EMPTY_SITE);
    const { only } = options;
    this.pairs = livePairs(this.#site).filter(({ plan }) => !only || only.includes(plan.id));
  }

  /** `visits`: the logs of the pair's visits, oldest first. */
  add(pair: SitePair, visits: readonly CheckedLog[]): void {
    const made = pairPage(
      { plan: pair.plan, visits, units: this.#site.units, code: this.#site.code },
      this.#moments,
    );
    this.#made.push({ pair, made: { ...made, visits: [] }, outcome: outcomeFor(pair, made) });
  }

  /** The cover, then one part for each pair. */
  parts(): Part[] {
    const found = reviewSite(this.#made.map(({ outcome }) => outcome));
    const of = (id: PairId): SiteFinding[] => found.filter(({ pair }) => pair === id);
    const pairs = this.#made.map(({ pair, made }) => ({
      pair,
      made: { ...made, status: statusOnSite(made.status, isPlanChanged(of(pair.plan.id))) },
    }));
    const input = { log: this.#log, site: this.#site, pairs, found, at: this.#options.at };
    return [
      coverPage(input, this.#moments),
      ...pairs.map(({ pair, made }) => withSiteFindings(made, of(pair.plan.id), this.#site.units)),
    ];
  }
}

/** What the review of the site needs: it does not keep the entries of hundreds of logs. */
const outcomeFor = ({ plan }: SitePair, { visits }: PairPage): PairOutcome => ({
  pair: plan.id,
  plan,
  pathLength: visits.at(-1)?.commission.setup.pathLength ?? plan.pathLength,
  visits: visits.flatMap((visit) => visitOutcome(visit) ?? []),
});
