import type { z } from 'zod';
import type { Severity } from '../../src/findings/finding.ts';
import { type PairOutcome, reviewSite, type SiteFinding } from '../../src/findings/site.ts';
import { brokenNextText, nextText } from '../../src/phrases/board.ts';
import { outcomeOf } from '../../src/site/account.ts';
import type { PairRow, SiteFindings, SiteRole, SiteView } from '../../src/site/protocol.ts';
import { livePairs, type SitePair } from '../../src/site/state.ts';
import type { Rooms } from '../rooms.ts';
import type { Accounts, Told } from './accounts.ts';
import type { Site } from './site.ts';

/** A pair with what is told of each of its visits, oldest first. */
interface Known {
  readonly pair: SitePair;
  readonly visits: readonly Told[];
}

/** A site's board and findings, from the accounts of its visits. */
export class Board {
  constructor(
    private readonly accounts: Accounts,
    private readonly rooms: Rooms,
  ) {}

  /** Rejects with `StoreFailure`. */
  async view(site: Site, role: SiteRole): Promise<z.input<typeof SiteView>> {
    const { head, state } = site;
    const known = await this.knownOf([...state.pairs.values()]);
    const findings = findingsOf(known);
    const pairs = await Promise.all(known.map((one) => this.row(one, findings)));
    const { site: name = '', code } = state;
    return { head, site: name, ...(code && { code }), role, pairs };
  }

  /** Rejects with `StoreFailure`. */
  async findings({ state }: Site): Promise<z.input<typeof SiteFindings>> {
    const known = await this.knownOf(livePairs(state));
    const perPair = known.flatMap(({ pair, visits }) =>
      visits.flatMap((told) =>
        told.kind === 'account'
          ? [{ pair: pair.plan.id, job: told.account.head.job, findings: told.account.findings }]
          : [],
      ),
    );
    return { perPair, site: findingsOf(known).map((each) => ({ ...each, entries: [...each.entries] })) };
  }

  private knownOf(pairs: readonly SitePair[]): Promise<Known[]> {
    return Promise.all(
      pairs.map(async (pair) => {
        const visits = await Promise.all(pair.visits.map(({ job }) => this.accounts.of(job)));
        return { pair, visits: visits.filter((told) => told !== undefined) };
      }),
    );
  }

  private async row({ pair, visits }: Known, findings: readonly SiteFinding[]): Promise<PairRow> {
    const { plan, dropped } = pair;
    const latest = visits.at(-1);
    const job = pair.visits.at(-1)?.job;
    const room = job === undefined ? undefined : await this.rooms.live(job);
    const told = latest?.kind === 'account' ? latest.account.findings : [];
    const all = [...told, ...findings.filter((each) => each.pair === plan.id)];
    const count = (severity: Severity) => all.filter((each) => each.severity === severity).length;
    return {
      plan,
      ...(dropped && { dropped: { at: dropped.at, reason: dropped.reason } }),
      visits: pair.visits.map(({ job, at }) => ({ job, at })),
      online: { panel: room?.isOnline('panel') ?? false, emitter: room?.isOnline('emitter') ?? false },
      findings: { serious: count('serious'), question: count('question'), note: count('note') },
      ...latestOf(latest),
    };
  }
}

/** What the latest visit says of where the pair stands. */
function latestOf(
  latest: Told | undefined,
): Pick<PairRow, 'standing' | 'next' | 'final' | 'head' | 'signed'> {
  if (!latest) return { standing: 'not-started', next: nextText('not-started') };
  if (latest.kind === 'broken') {
    const { count, hash } = latest.head;
    return {
      standing: 'needs-attention',
      next: brokenNextText(latest.fault.seq),
      head: { count, hash },
    };
  }
  const { standing, next, final, signed, head } = latest.account;
  return {
    standing,
    next,
    ...(final !== undefined && { final }),
    head: { count: head.count, hash: head.hash },
    ...(signed && { signed }),
  };
}

/** Of the pairs that belong to the site now. */
const findingsOf = (known: readonly Known[]): SiteFinding[] =>
  reviewSite(
    known
      .filter(({ pair }) => !pair.dropped)
      .map(({ pair, visits }): PairOutcome => {
        const accounts = visits.flatMap((told) => (told.kind === 'account' ? [told.account] : []));
        return {
          pair: pair.plan.id,
          pathLength: pair.plan.pathLength ?? accounts.at(-1)?.pathLength,
          visits: accounts.map(outcomeOf),
        };
      }),
  );
