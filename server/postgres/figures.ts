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
      const {
        sites = 0,
        pairs = 0,
        behind = 0,
        damaged = 0,
        drifting = 0,
        compared = 0,
        timed = 0,
      } = of ?? {};
      const { over = 0, soon = 0, dated = 0, undated = 0 } = of ?? {};
      const [half, most] = await ladderTimes(rows, timed);
      return {
        ...{ sites, pairs, behind, damaged },
        drifting: {
          ...{ pairs: drifting, compared },
          most: (await rows<Named & { lost: number | null }>(DRIFTING, [MOST_NAMED])).map(
            ({ lost, ...named }) => ({ ...named, ...(lost !== null && { lost }) }),
          ),
        },
        ladder: { pairs: timed, ...(half !== undefined && most !== undefined && { half, most }) },
        findings: await rows<Figures['findings'][number]>(FINDINGS),
        due: {
          ...{ over, soon, later: dated - over - soon, none: undated },
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
  timed: number;
  over: number;
  soon: number;
  dated: number;
  undated: number;
}

/** Half of the times are no longer than the first, nine of ten no longer than the second; by their places in the index, from the nearer end. */
async function ladderTimes(rows: Database['rows'], timed: number): Promise<(number | undefined)[]> {
  if (timed === 0) return [];
  const times: (number | undefined)[] = [];
  for (const [share, order] of [
    [0.5, 'ASC'],
    [0.9, 'DESC'],
  ] as const) {
    const place = Math.ceil(share * timed);
    const [row] = await rows<{ ladder: number }>(
      `SELECT ladder FROM pair_figures WHERE ladder IS NOT NULL ORDER BY ladder ${order} LIMIT 1 OFFSET $1`,
      [order === 'ASC' ? place - 1 : timed - place],
    );
    times.push(row?.ladder);
  }
  return times;
}

type Named = Omit<Figures['due']['next'][number], 'due'>;

/** Sites are added up, and not pairs; what is due is counted in its index, up to a month from now. */
const COUNTED = `
  SELECT count(*) FILTER (WHERE count > 0)::integer AS sites,
    ${['pairs', 'damaged', 'drifting', 'compared', 'timed', 'dated', 'undated'].map((sum) => `coalesce(sum(${sum}), 0)::integer AS ${sum}`).join(', ')},
    (SELECT count(*)::integer FROM changed_logs c JOIN pair_figures p ON p.firm = c.firm AND p.job = c.job
      WHERE NOT EXISTS (SELECT FROM leases l WHERE l.job = c.job)) AS behind,
    (SELECT count(*)::integer FROM pair_figures WHERE due < $1) AS over,
    (SELECT count(*)::integer FROM pair_figures WHERE due >= $1 AND due < $2) AS soon
  FROM site_figures`;

const NAMED = 'FROM pair_figures p JOIN site_figures s ON s.site = p.site AND s.firm = p.firm WHERE';
const DRIFTING = `
  SELECT s.name AS site, s.site AS log, p.pair, p.lost::float8 AS lost ${NAMED} p.drifting
  ORDER BY p.lost DESC NULLS LAST LIMIT $1`;
const DUE = `
  SELECT s.name AS site, s.site AS log, p.pair, p.due ${NAMED} p.due IS NOT NULL
  ORDER BY p.due LIMIT $1`;
const FINDINGS = `
  SELECT finding AS id, severity, pairs FROM finding_totals WHERE pairs > 0
  ORDER BY array_position(ARRAY['serious', 'question', 'note'], severity), pairs DESC, finding`;
