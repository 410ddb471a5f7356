import { loadavg, tmpdir } from 'node:os';
import { Command } from 'commander';
import { Firms } from '../../server/firms/firms.ts';
import type { DatabaseAddress } from '../../server/postgres/address.ts';
import { openPostgres, openTables } from '../../server/postgres/open.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { FINDING_IDS } from '../../src/model/finding.ts';
import { Cluster } from '../postgres/cluster.ts';

/**
 * How long the figures over all sites take, with so many entries in the database, as one firm's login: all of them are that firm's, and
 * another firm has a tenth as many. The rows are made up, as large as those of the demonstration: 250 entries of 500 letters a visit,
 * 2 visits a pair, 40 pairs a site, 3 findings a pair. Of a hundred records one has grown since it was counted.
 * Larger sizes have only the tables that the figures are counted from, and the heads: no other is read.
 */
const options = new Command('bench:figures')
  .option('--entries <list>', 'sizes, with commas', '1000000,3000000,10000000')
  .option('--without-entries <list>', 'larger sizes, of which only what is counted is laid', '100000000')
  .option('--asked <n>', 'times that the figures are asked for', Number, 20)
  .parse()
  .opts<{ entries: string; withoutEntries: string; asked: number }>();

const ENTRIES_OF_PAIR = 500;
const PAIRS_OF_SITE = 40;
const NORTH = 'North Example';
const SOUTH = 'South Example';

/** Pairs `from` to `to` of a firm, with all that belongs to them. */
const lay = (firm: string, from: number, to: number, withEntries: boolean): string => `
  SET session_replication_role = replica;
  CREATE TEMP TABLE laid AS SELECT n, '${firm.slice(0, 1)}' || lpad((n / ${PAIRS_OF_SITE})::text, 9, '0') AS site,
    '${firm.slice(0, 1)}' || lpad(n::text, 9, '0') || '-' AS job FROM generate_series(${from}, ${to - 1}) n;
  ${
    withEntries
      ? `INSERT INTO entries (job, seq, ref, hash, body, firm)
    SELECT job || visit, seq, 'message-' || seq, repeat(md5(job || seq), 2), repeat(md5(job || visit || seq), 15), '${firm}'
    FROM laid, generate_series(0, 1) visit, generate_series(0, 249) seq;`
      : ''
  }
  INSERT INTO heads (job, count, hash, firm) SELECT job || visit, 250, md5(job), '${firm}' FROM laid, generate_series(0, 1) visit;
  INSERT INTO heads (job, count, hash, firm) SELECT DISTINCT site, 80, md5(site), '${firm}' FROM laid ON CONFLICT DO NOTHING;
  INSERT INTO passes (token, job, role, firm) SELECT DISTINCT md5(site), site, 'desk', '${firm}' FROM laid ON CONFLICT DO NOTHING;
  INSERT INTO site_figures (site, name, count, hash, firm) SELECT DISTINCT site, 'Site ' || site, 80, md5(site), '${firm}' FROM laid ON CONFLICT DO NOTHING;
  INSERT INTO pair_figures (site, pair, job, count, hash, visits, damaged, drifting, lost, ladder, due, firm)
    SELECT site, 'P' || n, job || 1, 250, CASE WHEN n % 100 = 0 THEN 'older' ELSE md5(job) END, 2, n % 997 = 0, n % 23 = 0,
      CASE WHEN n % 3 > 0 THEN random() * 3 - 0.5 END, 300000 + (random() * 3000000)::bigint,
      CASE WHEN n % 5 > 0 THEN 1795000000000 + (random() * 3e10)::bigint END, '${firm}' FROM laid;
  INSERT INTO finding_figures (site, pair, finding, severity, firm)
    SELECT site, 'P' || n, ('{${FINDING_IDS.join()}}'::text[])[1 + (n * 7 + each * 11) % ${FINDING_IDS.length}],
      (ARRAY['serious', 'question', 'note'])[1 + (n + each) % 3], '${firm}' FROM laid, generate_series(0, 2) each;
  INSERT INTO changed_logs (firm, job, count) SELECT '${firm}', job || 1, 251 FROM laid WHERE n % 100 = 0;
  UPDATE site_figures s SET pairs = c.pairs, damaged = c.damaged, drifting = c.drifting, compared = c.compared, timed = c.timed,
    dated = c.dated, undated = c.undated FROM (
      SELECT site, count(*) AS pairs, count(*) FILTER (WHERE damaged) AS damaged, count(*) FILTER (WHERE drifting) AS drifting,
        count(lost) AS compared, count(ladder) AS timed, count(due) AS dated, count(*) FILTER (WHERE due IS NULL AND NOT damaged) AS undated
      FROM pair_figures WHERE firm = '${firm}' GROUP BY site) c WHERE c.site = s.site AND s.firm = '${firm}';
  DELETE FROM finding_totals WHERE firm = '${firm}';
  INSERT INTO finding_totals (firm, finding, severity, pairs)
    SELECT firm, finding, severity, count(*) FROM finding_figures WHERE firm = '${firm}' GROUP BY firm, finding, severity;
  DROP TABLE laid;`;

/** Made again after the rows are laid: that is quicker than row by row. */
const WITHOUT_INDEXES =
  'ALTER TABLE entries DROP CONSTRAINT entries_pkey; DROP INDEX entries_by_ref; DROP INDEX entries_by_firm;';
const INDEXES = `SET maintenance_work_mem = '1GB';
  ALTER TABLE entries ADD PRIMARY KEY (job, seq, firm);
  CREATE UNIQUE INDEX entries_by_ref ON entries (job, ref, firm) WHERE ref IS NOT NULL;
  CREATE INDEX entries_by_firm ON entries (firm, job);`;

const sizesIn = (list: string): number[] => list.split(',').map(Number);

const median = (sorted: readonly number[]): number => sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;

async function timed<T>(work: () => Promise<T>): Promise<[ms: number, value: T]> {
  const began = performance.now();
  const value = await work();
  return [performance.now() - began, value];
}

/** PostgreSQL's own settings, but for what makes the rows quicker to lay. The server refuses one that does not sync. */
const FILLING = { fsync: 'off', wal_level: 'minimal', max_wal_senders: '0', max_wal_size: '8GB' };

const cluster = await Cluster.start(FILLING, tmpdir());
try {
  for (const login of ['owner', 'north', 'south'])
    await cluster.sql(`CREATE ROLE ${login} LOGIN PASSWORD '${cluster.password}'`);
  await cluster.sql('GRANT CREATE ON DATABASE postgres TO owner');
  await again({});
  const place = cluster.newPlace();
  const as = (login: string): DatabaseAddress => ({
    ...place,
    url: place.url.replace('tester@', `${login}@`),
  });
  const tables = await openTables(as('owner'));
  const firms = new Firms(tables);
  await firms.add({ name: NORTH, login: 'north' });
  await firms.add({ name: SOUTH, login: 'south' });
  await tables.close();

  const sizes = [
    ...sizesIn(options.entries).map((entries) => ({ entries, withEntries: true })),
    ...sizesIn(options.withoutEntries).map((entries) => ({ entries, withEntries: false })),
  ];
  const rows = [];
  let laid = 0;
  for (const { entries, withEntries } of sizes) {
    const pairs = Math.floor(entries / ENTRIES_OF_PAIR);
    await again(FILLING);
    if (withEntries) await cluster.sql(WITHOUT_INDEXES, place.schema);
    await cluster.sql(lay(NORTH, laid, pairs, withEntries), place.schema);
    await cluster.sql(lay(SOUTH, Math.floor(laid / 10), Math.floor(pairs / 10), withEntries), place.schema);
    if (withEntries) await cluster.sql(INDEXES, place.schema);
    laid = pairs;
    await cluster.sql('VACUUM ANALYZE');
    await cluster.sql('CHECKPOINT');
    await again({});
    const store = await openPostgres(as('north'), newSummaryKey());
    const [first, figures] = await timed(() => store.figures.over(Date.now()));
    if (figures.pairs !== pairs) throw new Error(`${figures.pairs} pairs were counted, not ${pairs}`);
    const times: number[] = [];
    for (let i = 0; i < options.asked; i++)
      times.push((await timed(() => store.figures.over(Date.now())))[0]);
    times.sort((a, b) => a - b);
    const [claim] = await timed(() => store.figures.claim(10));
    const [size] = await cluster.sql(`
      SELECT (sum(pg_total_relation_size(oid)) / 1e9)::float8 AS gb,
        (SELECT count(*)::integer FROM ${place.schema}.entries) AS entries
      FROM pg_class WHERE relkind = 'r' AND relnamespace = '${place.schema}'::regnamespace`);
    rows.push({
      entries: withEntries ? size?.entries : `as of ${entries}`,
      pairs,
      'GB, all': Number(size?.gb).toFixed(1),
      'first, ms': Math.round(first),
      'half, ms': Math.round(median(times)),
      'most, ms': Math.round(times.at(-1) ?? Number.NaN),
      'what changed, ms': Math.round(claim),
      load: loadavg()[0]?.toFixed(1),
    });
    console.log(JSON.stringify(rows.at(-1)));
    await store.close();
  }
  console.table(rows);
} finally {
  await cluster.remove();
}

/** The database anew, with other settings; what it had read is out of its own memory. */
async function again(settings: Record<string, string>): Promise<void> {
  await cluster.stop();
  await cluster.run(settings);
}
