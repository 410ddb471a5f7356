import { FIRM, ownRows } from './firms-schema.ts';

/**
 * What the figures over all sites are counted from: derived from the logs, with the head that each row came from, and made again
 * where it is lost. Nothing else reads it.
 */
export const FIGURES = `
  CREATE TABLE site_figures (
    ${FIRM},
    site text COLLATE "C" NOT NULL,
    name text NOT NULL,
    count integer NOT NULL,
    hash text NOT NULL,
    -- Until then one process works on it, and no other begins.
    claimed_until timestamptz,
    PRIMARY KEY (firm, site)
  );
  CREATE TABLE pair_figures (
    ${FIRM},
    site text COLLATE "C" NOT NULL,
    pair text COLLATE "C" NOT NULL,
    job text COLLATE "C",
    count integer,
    hash text,
    visits integer NOT NULL,
    damaged boolean NOT NULL,
    drifting boolean NOT NULL,
    lost real,
    ladder bigint,
    due bigint,
    PRIMARY KEY (firm, site, pair)
  );
  CREATE INDEX pair_figures_drifting ON pair_figures (firm, lost DESC NULLS LAST) WHERE drifting;
  CREATE INDEX pair_figures_due ON pair_figures (firm, due) WHERE due IS NOT NULL;
  CREATE TABLE finding_figures (
    ${FIRM},
    site text COLLATE "C" NOT NULL,
    pair text COLLATE "C" NOT NULL,
    finding text COLLATE "C" NOT NULL,
    severity text COLLATE "C" NOT NULL,
    PRIMARY KEY (firm, site, pair, finding)
  );
  CREATE INDEX finding_figures_by_kind ON finding_figures (firm, finding, severity);
  ${['site_figures', 'pair_figures', 'finding_figures'].map(ownRows).join('')}
  -- By which sites are found: each has a desk from the first moment on.
  CREATE INDEX passes_of_desks ON passes (job) WHERE role = 'desk';

  -- All of a site at once; figures of an older log than those that are there are left.
  CREATE FUNCTION keep_figures(_site jsonb, _pairs jsonb) RETURNS void LANGUAGE plpgsql AS $$
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
    DELETE FROM pair_figures p WHERE p.site = _log;
    DELETE FROM finding_figures f WHERE f.site = _log;
    INSERT INTO pair_figures (site, pair, job, count, hash, visits, damaged, drifting, lost, ladder, due)
      SELECT _log, p.pair, p.job, p.count, p.hash, p.visits, p.damaged, p.drifting, p.lost, p.ladder, p.due
      FROM jsonb_to_recordset(_pairs) p(pair text, job text, count integer, hash text, visits integer, damaged boolean,
        drifting boolean, lost real, ladder bigint, due bigint);
    INSERT INTO finding_figures (site, pair, finding, severity)
      SELECT _log, p->>'pair', f->>'id', f->>'severity'
      FROM jsonb_array_elements(_pairs) p, jsonb_array_elements(p->'findings') f;
  END $$;

  -- Sites that were never counted, or whose log or the log of a visit has changed since, but for visits that are under way.
  CREATE FUNCTION claim_figures(_most integer, _ms integer) RETURNS SETOF text LANGUAGE plpgsql AS $$
  BEGIN
    INSERT INTO site_figures (site, name, count, hash)
      SELECT p.job, '', 0, '' FROM passes p WHERE p.role = 'desk'
        AND NOT EXISTS (SELECT FROM site_figures f WHERE f.site = p.job)
      ON CONFLICT DO NOTHING;
    RETURN QUERY UPDATE site_figures u SET claimed_until = now() + _ms * interval '1 ms' WHERE u.site IN (
      SELECT f.site FROM site_figures f WHERE (f.claimed_until IS NULL OR f.claimed_until < now())
        AND (
          EXISTS (SELECT FROM heads h WHERE h.job = f.site AND h.hash <> f.hash)
          OR f.site IN (SELECT p.site FROM pair_figures p JOIN heads h ON h.job = p.job
            WHERE h.hash <> p.hash AND NOT EXISTS (SELECT FROM leases l WHERE l.job = p.job))
        )
      ORDER BY f.site LIMIT _most FOR UPDATE SKIP LOCKED
    ) RETURNING u.site;
  END $$;
`;
