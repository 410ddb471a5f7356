import type { JobId } from '../../src/model/ids.ts';
import { type Figures, MOST_NAMED, SOON_MS } from '../../src/protocol/figures.ts';
import type { FigureStore, SiteFigures } from '../store/figures.ts';
import type { Database } from './database.ts';

/** A process that works on a site for longer has ended, and another one takes it. */
const CLAIM_MS = 10 * 60_000;

/** The figures over all sites of the firm, counted from indexed tables. */
export class PostgresFigures implements FigureStore {
  constructor(private readonly database: Database) {}

  async claim(most: number): Promise<JobId[]> {
    const rows = await this.database.rows<{ site: JobId }>('SELECT claim_figures($1, $2) AS site', [
      most,
      CLAIM_MS,
    ]);
    return rows.map(({ site }) => site);
  }

  async keep({ head, name, pairs }: SiteFigures): Promise<void> {
    const rows = pairs.map(({ head: of, ...pair }) => ({ ...pair, ...of }));
    await this.database.rows('SELECT keep_figures($1::jsonb, $2::jsonb)', [
      JSON.stringify({ site: head.job, name, count: head.count, hash: head.hash }),
      JSON.stringify(rows),
    ]);
  }

  /** All of one moment. */
  over(now: number): Promise<Figures> {
    return this.database.snapshot(async (rows) => {
      const [of] = await rows<Counted>(COUNTED, [now, now + SOON_MS]);
      const { sites = 0, pairs = 0, behind = 0, damaged = 0, drifting = 0, compared = 0 } = of ?? {};
      const { over = 0, soon = 0, later = 0, none = 0, timed = 0, times } = of ?? {};
      const [half, most] = times ?? [];
      return {
        ...{ sites, pairs, behind, damaged },
        drifting: {
          ...{ pairs: drifting, compared },
          most: (await rows<Named & { lost: number | null }>(DRIFTING, [MOST_NAMED])).map(
            ({ lost, ...named }) => ({ ...named, ...(lost !== null && { lost }) }),
          ),
        },
        ladder: { pairs: timed, ...(half != null && most != null && { half, most }) },
        findings: await rows<Figures['findings'][number]>(FINDINGS),
        due: {
          ...{ over, soon, later, none },
          next: await rows<Named & { due: number }>(DUE, [MOST_NAMED]),
        },
      };
    });
  }
}

interface Counted extends Record<string, unknown> {
  sites: number;
  pairs: number;
  behind: number;
  damaged: number;
  drifting: number;
  compared: number;
  over: number;
  soon: number;
  later: number;
  none: number;
  timed: number;
  times: (number | null)[] | null;
}

type Named = Omit<Figures['due']['next'][number], 'due'>;

const COUNTED = `
  SELECT count(*)::integer AS pairs,
    (SELECT count(*)::integer FROM site_figures WHERE count > 0) AS sites,
    (SELECT count(*)::integer FROM pair_figures p JOIN heads h ON h.job = p.job
      WHERE h.hash <> p.hash AND NOT EXISTS (SELECT FROM leases l WHERE l.job = p.job)) AS behind,
    count(*) FILTER (WHERE damaged)::integer AS damaged,
    count(*) FILTER (WHERE drifting)::integer AS drifting,
    count(lost)::integer AS compared,
    count(ladder)::integer AS timed,
    percentile_disc(ARRAY[0.5, 0.9]) WITHIN GROUP (ORDER BY ladder)::float8[] AS times,
    count(*) FILTER (WHERE due < $1)::integer AS over,
    count(*) FILTER (WHERE due >= $1 AND due < $2)::integer AS soon,
    count(*) FILTER (WHERE due >= $2)::integer AS later,
    count(*) FILTER (WHERE due IS NULL AND NOT damaged)::integer AS none
  FROM pair_figures`;

const NAMED = 'FROM pair_figures p JOIN site_figures s ON s.site = p.site AND s.firm = p.firm WHERE';
const DRIFTING = `
  SELECT s.name AS site, s.site AS log, p.pair, p.lost::float8 AS lost ${NAMED} p.drifting
  ORDER BY p.lost DESC NULLS LAST LIMIT $1`;
const DUE = `
  SELECT s.name AS site, s.site AS log, p.pair, p.due ${NAMED} p.due IS NOT NULL
  ORDER BY p.due LIMIT $1`;
const FINDINGS = `
  SELECT finding AS id, severity, count(*)::integer AS pairs FROM finding_figures
  GROUP BY finding, severity ORDER BY array_position(ARRAY['serious', 'question', 'note'], severity), pairs DESC, finding`;
