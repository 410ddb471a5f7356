import { FIRM, grantFirm, OURS_FIRST, ownRows } from './firms-schema.ts';
import { READ_GRANTS } from './reads-schema.ts';

const SUMS = ['pairs', 'damaged', 'drifting', 'compared', 'timed', 'dated', 'undated'] as const;

const COUNTED = `count(*) AS pairs, count(*) FILTER (WHERE damaged) AS damaged, count(*) FILTER (WHERE drifting) AS drifting,
  count(lost) AS compared, count(ladder) AS timed, count(due) AS dated, count(*) FILTER (WHERE due IS NULL AND NOT damaged) AS undated`;

const DERIVED = ['heads', 'leases', 'passes', 'site_figures', 'pair_figures', 'finding_figures'];
/** Its owner works on the rows of all firms for a moment: else a database that firms share would be brought up without them. */
const held = (how: 'FORCE' | 'NO FORCE'): string =>
  DERIVED.map((table) => `ALTER TABLE ${table} ${how} ROW LEVEL SECURITY;`).join('\n');

/**
 * Totals of each site, and findings of all of them, so that the figures add up sites and not pairs; and the logs that have changed since they were counted, so
 * that nobody looks for them among all. A log that a process has is noted when it gives it up, and not with each append.
 */
export const TOTALS = `
  ${OURS_FIRST}
  ALTER TABLE site_figures ${SUMS.map((sum) => `ADD COLUMN ${sum} integer NOT NULL DEFAULT 0`).join(', ')};
  CREATE TABLE finding_totals (
    ${FIRM},
    finding text COLLATE "C" NOT NULL,
    severity text COLLATE "C" NOT NULL,
    pairs integer NOT NULL,
    PRIMARY KEY (firm, finding, severity)
  );
  CREATE TABLE changed_logs (
    ${FIRM},
    job text COLLATE "C" NOT NULL,
    -- How long it was then.
    count integer NOT NULL,
    at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (firm, job)
  );
  ${['finding_totals', 'changed_logs'].map(ownRows).join('')}
  CREATE INDEX pair_figures_by_job ON pair_figures (firm, job);
  CREATE INDEX pair_figures_ladder ON pair_figures (firm, ladder) WHERE ladder IS NOT NULL;
  DROP INDEX finding_figures_by_kind;

  ${held('NO FORCE')}
  UPDATE site_figures s SET ${SUMS.map((sum) => `${sum} = c.${sum}`).join(', ')}
    FROM (SELECT firm, site, ${COUNTED} FROM pair_figures GROUP BY firm, site) c WHERE c.firm = s.firm AND c.site = s.site;
  ALTER TABLE finding_totals NO FORCE ROW LEVEL SECURITY;
  INSERT INTO finding_totals (firm, finding, severity, pairs)
    SELECT firm, finding, severity, count(*) FROM finding_figures GROUP BY firm, finding, severity;
  ALTER TABLE finding_totals FORCE ROW LEVEL SECURITY;
  ALTER TABLE changed_logs NO FORCE ROW LEVEL SECURITY;
  INSERT INTO changed_logs (firm, job, count)
    SELECT p.firm, p.job, h.count FROM pair_figures p JOIN heads h ON h.firm = p.firm AND h.job = p.job WHERE h.hash <> p.hash
    UNION SELECT f.firm, f.site, h.count FROM site_figures f JOIN heads h ON h.firm = f.firm AND h.job = f.site WHERE h.hash <> f.hash;
  ALTER TABLE changed_logs FORCE ROW LEVEL SECURITY;
  ${held('FORCE')}

  CREATE FUNCTION note_change(_job text, _count integer) RETURNS void LANGUAGE sql AS $$
    INSERT INTO changed_logs AS c (job, count) VALUES (_job, _count)
      ON CONFLICT (firm, job) DO UPDATE SET count = greatest(c.count, excluded.count), at = now();
  $$;
  CREATE FUNCTION head_moved() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    IF NOT EXISTS (SELECT FROM leases l WHERE l.job = NEW.job) THEN
      PERFORM note_change(NEW.job, NEW.count);
    END IF;
    RETURN NULL;
  END $$;
  CREATE TRIGGER head_moved AFTER INSERT OR UPDATE ON heads FOR EACH ROW EXECUTE FUNCTION head_moved();
  CREATE FUNCTION lease_ended() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    PERFORM note_change(h.job, h.count) FROM heads h WHERE h.job = OLD.job;
    RETURN NULL;
  END $$;
  CREATE TRIGGER lease_ended AFTER DELETE ON leases FOR EACH ROW EXECUTE FUNCTION lease_ended();

  -- All of a site at once; figures of an older log than those that are there are left.
  CREATE OR REPLACE FUNCTION keep_figures(_site jsonb, _pairs jsonb) RETURNS void LANGUAGE plpgsql AS $$
  DECLARE
    _log text COLLATE "C" := _site->>'site';
  BEGIN
    INSERT INTO site_figures AS f (site, name, count, hash)
      VALUES (_log, _site->>'name', (_site->>'count')::integer, _site->>'hash')
      ON CONFLICT (firm, site) DO UPDATE
      SET name = excluded.name, count = excluded.count, hash = excluded.hash, claimed_until = NULL
      WHERE f.count <= excluded.count;
    IF NOT FOUND THEN
      RETURN;
    END IF;
    -- The totals of findings are of all sites: one process at a time changes them.
    PERFORM pg_advisory_xact_lock(hashtext('ladderline: figures'), hashtext(current_firm()));
    UPDATE finding_totals t SET pairs = t.pairs - f.pairs FROM (
      SELECT finding, severity, count(*) AS pairs FROM finding_figures o WHERE o.site = _log GROUP BY finding, severity
    ) f WHERE f.finding = t.finding AND f.severity = t.severity;
    DELETE FROM pair_figures p WHERE p.site = _log;
    DELETE FROM finding_figures f WHERE f.site = _log;
    INSERT INTO pair_figures (site, pair, job, count, hash, visits, damaged, drifting, lost, ladder, due)
      SELECT _log, p.pair, p.job, p.count, p.hash, p.visits, p.damaged, p.drifting, p.lost, p.ladder, p.due
      FROM jsonb_to_recordset(_pairs) p(pair text, job text, count integer, hash text, visits integer, damaged boolean,
        drifting boolean, lost real, ladder bigint, due bigint);
    INSERT INTO finding_figures (site, pair, finding, severity)
      SELECT _log, p->>'pair', f->>'id', f->>'severity'
      FROM jsonb_array_elements(_pairs) p, jsonb_array_elements(p->'findings') f;
    UPDATE site_figures s SET ${SUMS.map((sum) => `${sum} = c.${sum}`).join(', ')}
      FROM (SELECT ${COUNTED} FROM pair_figures p WHERE p.site = _log) c WHERE s.site = _log;
    INSERT INTO finding_totals AS t (finding, severity, pairs)
      SELECT f.finding, f.severity, count(*) FROM finding_figures f WHERE f.site = _log GROUP BY f.finding, f.severity
      ON CONFLICT (firm, finding, severity) DO UPDATE SET pairs = t.pairs + excluded.pairs;
    -- Only up to what was counted: what came since stays noted.
    DELETE FROM changed_logs c WHERE c.job = _log AND c.count <= (_site->>'count')::integer;
    DELETE FROM changed_logs c USING pair_figures p WHERE p.site = _log AND p.firm = c.firm AND p.job = c.job AND c.count <= p.count;
  END $$;

  -- Sites that were never counted, or whose log or the log of a visit has changed since, but for visits that are under way.
  CREATE OR REPLACE FUNCTION claim_figures(_most integer, _ms integer) RETURNS SETOF text LANGUAGE plpgsql AS $$
  BEGIN
    INSERT INTO site_figures (site, name, count, hash)
      SELECT p.job, '', 0, '' FROM passes p WHERE p.role = 'desk'
        AND NOT EXISTS (SELECT FROM site_figures f WHERE f.site = p.job)
      ON CONFLICT DO NOTHING;
    -- Jobs of no site, and earlier visits: their sites are counted without them. An hour later than whoever counts them now needs.
    DELETE FROM changed_logs c WHERE c.at < now() - interval '1 hour'
      AND NOT EXISTS (SELECT FROM pair_figures p WHERE p.firm = c.firm AND p.job = c.job)
      AND NOT EXISTS (SELECT FROM site_figures f WHERE f.firm = c.firm AND f.site = c.job);
    RETURN QUERY UPDATE site_figures u SET claimed_until = now() + _ms * interval '1 ms' WHERE u.site IN (
      SELECT f.site FROM site_figures f WHERE (f.claimed_until IS NULL OR f.claimed_until < now())
        AND (f.count = 0 OR f.site IN (
          SELECT c.job FROM changed_logs c
          UNION ALL SELECT p.site FROM changed_logs c JOIN pair_figures p ON p.firm = c.firm AND p.job = c.job
            WHERE NOT EXISTS (SELECT FROM leases l WHERE l.job = c.job)
        ))
      ORDER BY f.site LIMIT _most FOR UPDATE SKIP LOCKED
    ) RETURNING u.site;
  END $$;
  ${grantFirm([...READ_GRANTS, 'SELECT, INSERT, UPDATE, DELETE ON finding_totals, changed_logs'])}
`;
