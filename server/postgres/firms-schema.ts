/** A table of the caller's own, made for a while, must not stand before ours in what runs with the owner's rights. */
export const OURS_FIRST =
  "SELECT set_config('search_path', quote_ident(current_schema()) || ', pg_temp', true);";

/** Whose a row is, in a table that was made when there were firms. */
export const FIRM = 'firm text COLLATE "C" NOT NULL DEFAULT current_firm()';

/**
 * Firms that share a database. **The firm is who has logged in**: each has a login of its own, and no statement of
 * that login, whatever it says, sets or leaves out, reaches a row of another firm. The owner of the tables, without any firms, has
 * those of the firm without a name: so it is where one firm has the database for itself.
 */
export const FIRMS = `
  ${OURS_FIRST}

  CREATE TABLE firms (
    name text COLLATE "C" PRIMARY KEY CHECK (name <> ''),
    login name NOT NULL UNIQUE
  );

  -- NULL for a login that belongs to no firm: it has no rows, and can write none.
  CREATE FUNCTION current_firm() RETURNS text LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path FROM CURRENT AS $$
  BEGIN
    RETURN coalesce((SELECT f.name FROM firms f WHERE f.login = session_user),
      CASE WHEN pg_has_role(session_user, current_user, 'MEMBER') THEN '' END);
  END $$;

  CREATE FUNCTION has_firms() RETURNS boolean LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path FROM CURRENT AS $$
  BEGIN
    RETURN EXISTS (SELECT FROM firms);
  END $$;
`;

/** The tables whose rows are a firm's, and what names a row there: also under the same name no firm is in another one's way. */
const KEYS: Record<string, { primary?: string; unique?: string }> = {
  entries: { primary: 'job, seq, firm' },
  heads: { unique: 'job, firm' },
  passes: { primary: 'token, firm' },
  codes: { primary: 'code, firm', unique: 'job, firm, seat' },
  summaries: { primary: 'job, firm' },
  // Each firm's tree has its own numbers, without a gap.
  signed_heads: { primary: 'firm, number' },
  enclosures: { primary: 'job, seq, firm' },
  names: { primary: 'job, seq, firm' },
  stamps: { primary: 'firm, size' },
  processes: {},
  leases: { primary: 'job, firm' },
};

/** Also the owner of the tables is held to it. Who is neither owner nor firm is shown nothing, and only a superuser passes by. */
export const ownRows = (table: string): string => `
  ALTER TABLE ${table} ENABLE ROW LEVEL SECURITY;
  ALTER TABLE ${table} FORCE ROW LEVEL SECURITY;
  CREATE POLICY own_firm ON ${table} USING (firm = (SELECT current_firm())) WITH CHECK (firm = (SELECT current_firm()));
`;

const ofFirm = ([table, { primary, unique }]: (typeof TABLES)[number]): string => `
  ALTER TABLE ${table} ADD COLUMN firm text COLLATE "C" NOT NULL DEFAULT '';
  ALTER TABLE ${table} ALTER COLUMN firm SET DEFAULT current_firm();
  ${primary ? `ALTER TABLE ${table} DROP CONSTRAINT ${table}_pkey, ADD PRIMARY KEY (${primary});` : ''}
  ${unique ? `ALTER TABLE ${table} ADD UNIQUE (${unique});` : ''}
  ${ownRows(table)}`;

const TABLES = Object.entries(KEYS);

export const LOGS_OF_FIRMS = `
  ALTER TABLE heads DROP CONSTRAINT heads_job_key;
  ALTER TABLE codes DROP CONSTRAINT codes_job_seat_key;
  DROP INDEX entries_by_ref;
  ${TABLES.map(ofFirm).join('')}
  CREATE UNIQUE INDEX entries_by_ref ON entries (job, ref, firm) WHERE ref IS NOT NULL;
  -- By which the logs of a firm are found without reading those of others.
  CREATE INDEX entries_by_firm ON entries (firm, job);
  CREATE INDEX heads_by_firm ON heads (firm, number);

  DROP FUNCTION take_lease(text, bigint);
  DROP FUNCTION append(jsonb);

  -- Without a lock of the whole table: a firm's login could not take it, and firms do not wait for each other.
  CREATE OR REPLACE FUNCTION add_signed_heads(_heads jsonb) RETURNS void LANGUAGE plpgsql AS $$
  BEGIN
    PERFORM pg_advisory_xact_lock(hashtext('ladderline: signed heads'), hashtext(current_firm()));
    INSERT INTO signed_heads (number, job, count, hash, at, key, signature)
      SELECT (SELECT coalesce(max(s.number), -1) FROM signed_heads s WHERE s.firm = current_firm()) + h.n, h.head->>'job',
        (h.head->>'count')::integer, h.head->>'hash', (h.head->>'at')::bigint, h.head->>'key', h.head->>'signature'
      FROM jsonb_array_elements(_heads) WITH ORDINALITY h(head, n);
  END $$;

  CREATE OR REPLACE FUNCTION stamps_grow() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    PERFORM pg_advisory_xact_lock(hashtext('ladderline: stamps'));
    IF NEW.size <= (SELECT max(s.size) FROM stamps s WHERE s.firm = NEW.firm) THEN
      RAISE EXCEPTION 'time stamps are only added: each is of a larger tree';
    END IF;
    RETURN NEW;
  END $$;
`;

/** Of version 2 of the tables. */
const FIRST_GRANTS = [
  'SELECT ON ladderline_version',
  'SELECT, INSERT ON entries, signed_heads, stamps',
  'SELECT, INSERT, UPDATE ON heads, passes',
  'SELECT, INSERT, DELETE ON names, enclosures',
  'SELECT, INSERT, UPDATE, DELETE ON codes, summaries, processes, leases, site_figures, pair_figures, finding_figures',
  'USAGE ON SEQUENCE fences',
];

/**
 * What the login of a firm may do: what the server does, and no more. TRUNCATE would pass by the rules for rows, and what is only
 * added is never given to be changed. `more`: for tables that came later.
 */
export const grantFirm = (more: readonly string[] = []): string => `
  CREATE OR REPLACE FUNCTION grant_firm(_login name) RETURNS void LANGUAGE plpgsql AS $$
  DECLARE
    _what text;
  BEGIN
    EXECUTE format('GRANT USAGE ON SCHEMA %I TO %I', current_schema(), _login);
    FOREACH _what IN ARRAY ARRAY[${[...FIRST_GRANTS, ...more].map((what) => `'${what}'`).join(', ')}] LOOP
      EXECUTE format('GRANT %s TO %I', _what, _login);
    END LOOP;
  END $$;
  REVOKE EXECUTE ON FUNCTION grant_firm(name) FROM PUBLIC;
`;
