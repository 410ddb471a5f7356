import { FIGURES } from './figures-schema.ts';
import { FIRMS, grantFirm, LOGS_OF_FIRMS } from './firms-schema.ts';
import { READS } from './reads-schema.ts';
import { TOTALS } from './totals-schema.ts';

/**
 * The tables of the SQLite file (server/store/schema.ts), with the rules that no program can get round. Names and messages are
 * ordered by their bytes, whatever the language of the database.
 */
const TABLES = `
  CREATE TABLE entries (
    job text COLLATE "C" NOT NULL,
    seq integer NOT NULL,
    ref text COLLATE "C",
    hash text NOT NULL,
    body text NOT NULL,
    PRIMARY KEY (job, seq)
  );
  CREATE UNIQUE INDEX entries_by_ref ON entries (job, ref) WHERE ref IS NOT NULL;

  CREATE TABLE heads (
    number bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    job text COLLATE "C" NOT NULL UNIQUE,
    count integer NOT NULL,
    hash text NOT NULL
  ) WITH (fillfactor = 70);

  CREATE TABLE passes (
    token text COLLATE "C" PRIMARY KEY,
    job text COLLATE "C" NOT NULL,
    role text NOT NULL,
    revoked smallint NOT NULL DEFAULT 0
  );
  CREATE INDEX passes_by_role ON passes (job, role);

  CREATE TABLE codes (
    code text COLLATE "C" PRIMARY KEY,
    job text COLLATE "C" NOT NULL,
    seat text NOT NULL,
    expires_at bigint NOT NULL,
    UNIQUE (job, seat)
  );

  CREATE TABLE summaries (
    job text COLLATE "C" PRIMARY KEY,
    count integer NOT NULL,
    hash text NOT NULL,
    body text NOT NULL,
    seal text NOT NULL
  );

  CREATE TABLE signed_heads (
    number bigint PRIMARY KEY,
    job text COLLATE "C" NOT NULL,
    count integer NOT NULL,
    hash text NOT NULL,
    at bigint NOT NULL,
    key text NOT NULL,
    signature text NOT NULL
  );
  CREATE INDEX signed_heads_by_job ON signed_heads (job);

  CREATE TABLE enclosures (
    job text COLLATE "C" NOT NULL,
    seq integer NOT NULL,
    salt text NOT NULL,
    content bytea NOT NULL,
    PRIMARY KEY (job, seq)
  );

  CREATE TABLE names (
    job text COLLATE "C" NOT NULL,
    seq integer NOT NULL,
    salt text NOT NULL,
    names text NOT NULL,
    PRIMARY KEY (job, seq)
  );

  CREATE TABLE stamps (
    size bigint PRIMARY KEY,
    root text NOT NULL,
    at bigint NOT NULL,
    key text NOT NULL,
    signature text NOT NULL,
    nonce text NOT NULL,
    token text NOT NULL
  );
`;

/** A trigger cannot be got round by a mistake, and not by TRUNCATE either. Who owns the tables can drop it; the chain shows that. */
const APPEND_ONLY = `
  CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN RAISE EXCEPTION '%', TG_ARGV[0]; END $$;

  CREATE TRIGGER entries_stay BEFORE UPDATE OR DELETE ON entries FOR EACH ROW
    EXECUTE FUNCTION refuse('the log is append-only: entries are never changed or removed');
  CREATE TRIGGER heads_grow BEFORE UPDATE ON heads FOR EACH ROW WHEN (NEW.count <= OLD.count OR NEW.job <> OLD.job)
    EXECUTE FUNCTION refuse('the log is append-only: a head only moves on');
  CREATE TRIGGER heads_remain BEFORE DELETE ON heads FOR EACH ROW
    EXECUTE FUNCTION refuse('the log is append-only: a head is never removed');
  CREATE TRIGGER signed_heads_stay BEFORE UPDATE OR DELETE ON signed_heads FOR EACH ROW
    EXECUTE FUNCTION refuse('the log is append-only: signed heads are never changed or removed');
  CREATE TRIGGER enclosures_stay BEFORE UPDATE ON enclosures FOR EACH ROW
    EXECUTE FUNCTION refuse('what lies beside the log is removed or stays: it is never changed');
  CREATE TRIGGER names_stay BEFORE UPDATE ON names FOR EACH ROW
    EXECUTE FUNCTION refuse('what lies beside the log is removed or stays: it is never changed');
  CREATE TRIGGER stamps_stay BEFORE UPDATE OR DELETE ON stamps FOR EACH ROW
    EXECUTE FUNCTION refuse('time stamps are only added: they are never changed or removed');

  CREATE TRIGGER entries_whole BEFORE TRUNCATE ON entries
    EXECUTE FUNCTION refuse('the log is append-only: entries are never removed');
  CREATE TRIGGER heads_whole BEFORE TRUNCATE ON heads
    EXECUTE FUNCTION refuse('the log is append-only: a head is never removed');
  CREATE TRIGGER signed_heads_whole BEFORE TRUNCATE ON signed_heads
    EXECUTE FUNCTION refuse('the log is append-only: signed heads are never removed');
  CREATE TRIGGER stamps_whole BEFORE TRUNCATE ON stamps
    EXECUTE FUNCTION refuse('time stamps are only added: they are never removed');
`;

/**
 * Which process takes a job's input. A process is alive until a time of the database's own clock, the only one that all of
 * them share; whoever takes over a job gets a higher fence, and with the old one nothing more is stored.
 */
const LEASES = `
  CREATE TABLE processes (
    number bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    url text NOT NULL,
    alive_until timestamptz NOT NULL
  );
  CREATE SEQUENCE fences;
  CREATE TABLE leases (
    job text COLLATE "C" PRIMARY KEY,
    process bigint NOT NULL,
    fence bigint NOT NULL
  );
  CREATE INDEX leases_by_process ON leases (process);
`;

/** `key`: what names a log in the table of leases. */
const takeLease = (key: string): string => `
  CREATE FUNCTION take_lease(_job text, _process bigint) RETURNS jsonb LANGUAGE plpgsql AS $$
  DECLARE
    _is record;
    _fence bigint;
  BEGIN
    PERFORM 1 FROM heads h WHERE h.job = _job FOR UPDATE;
    SELECT l.process, l.fence, p.url, coalesce(p.alive_until > now(), false) AS alive INTO _is
      FROM leases l LEFT JOIN processes p ON p.number = l.process WHERE l.job = _job;
    IF _is.process = _process THEN
      RETURN jsonb_build_object('fence', _is.fence);
    ELSIF _is.alive THEN
      RETURN jsonb_build_object('url', _is.url);
    END IF;
    INSERT INTO leases AS l (job, process, fence) VALUES (_job, _process, nextval('fences'))
      ON CONFLICT (${key}) DO UPDATE SET process = excluded.process, fence = excluded.fence WHERE l.fence = _is.fence
      RETURNING l.fence INTO _fence;
    -- Of a log without a head, nothing was locked, and somebody else was quicker.
    RETURN CASE WHEN _fence IS NULL THEN take_lease(_job, _process) ELSE jsonb_build_object('fence', _fence) END;
  END $$;
`;

const PROCESSES = `
  CREATE FUNCTION renew_process(_process bigint, _url text, _ms integer) RETURNS void LANGUAGE sql AS $$
    INSERT INTO processes (number, url, alive_until) OVERRIDING SYSTEM VALUE
      VALUES (_process, _url, now() + _ms * interval '1 ms')
      ON CONFLICT (number) DO UPDATE SET alive_until = excluded.alive_until;
    -- Who has been silent for a day does not come back; what it still held is anybody's.
    DELETE FROM processes p WHERE p.alive_until < now() - interval '1 day';
  $$;

  CREATE FUNCTION end_process(_process bigint) RETURNS void LANGUAGE sql AS $$
    DELETE FROM leases l WHERE l.process = _process;
    DELETE FROM processes p WHERE p.number = _process;
  $$;
`;

/**
 * One append: all of it or nothing, in the transaction of the statement that calls it, with the same answers as the other
 * stores. An append names the fence of its process where that has the job; what no process has, as the log of a site, is appended
 * without one. The head's row is locked first by everyone, also by who takes a lease: so appends of a job, and changes of
 * who may append, come one after the other. `key`: what names a log in the tables of heads and codes.
 */
const append = (key: string): string => `
  CREATE FUNCTION append(_write jsonb) RETURNS jsonb LANGUAGE plpgsql AS $$
  DECLARE
    _job text COLLATE "C" := _write->>'job';
    _rows jsonb := _write->'rows';
    _keys jsonb := _write->'keys';
    _beside jsonb := _write->'enclosing';
    _first jsonb := _rows->0;
    _last jsonb := _rows->-1;
    _fence bigint := (_write->>'fence')::bigint;
    _held bigint;
    _seq integer;
    _count integer;
    _hash text;
  BEGIN
    SELECT h.count, h.hash INTO _count, _hash FROM heads h WHERE h.job = _job FOR UPDATE;
    IF NOT FOUND THEN
      _count := 0;
      _hash := _write->>'genesis';
    END IF;

    SELECT l.fence INTO _held FROM leases l WHERE l.job = _job;
    IF _held IS DISTINCT FROM _fence AND (_fence IS NOT NULL OR _first IS NOT NULL) THEN
      RETURN jsonb_build_object('kind', 'fenced');
    END IF;

    SELECT e.seq INTO _seq FROM jsonb_array_elements(_rows) WITH ORDINALITY r(row, n)
      JOIN entries e ON e.job = _job AND e.ref = r.row->>'ref' ORDER BY r.n LIMIT 1;
    IF FOUND THEN
      RETURN jsonb_build_object('kind', 'duplicate', 'seq', _seq);
    END IF;

    IF _first IS NOT NULL AND ((_first->>'seq')::integer <> _count OR _first->>'prev' <> _hash) THEN
      RETURN jsonb_build_object('kind', 'conflict',
        'head', jsonb_build_object('job', _job, 'count', _count, 'hash', _hash));
    END IF;

    IF _keys ? 'spend' THEN
      DELETE FROM codes c WHERE c.code = _keys#>>'{spend,code}' AND c.expires_at > (_keys#>>'{spend,now}')::bigint;
      IF NOT FOUND THEN
        RETURN jsonb_build_object('kind', 'spent');
      END IF;
    END IF;

    IF _first IS NOT NULL THEN
      INSERT INTO entries (job, seq, ref, hash, body)
        SELECT _job, (r->>'seq')::integer, r->>'ref', r->>'hash', r->>'body' FROM jsonb_array_elements(_rows) r;
      INSERT INTO names (job, seq, salt, names)
        SELECT _job, (r->>'seq')::integer, r->>'salt', r->>'names' FROM jsonb_array_elements(_rows) r
        WHERE r->>'names' IS NOT NULL;
      INSERT INTO heads AS h (job, count, hash) VALUES (_job, (_last->>'seq')::integer + 1, _last->>'hash')
        ON CONFLICT (${key}) DO UPDATE SET count = excluded.count, hash = excluded.hash WHERE h.count = _count;
      IF NOT FOUND THEN
        RAISE EXCEPTION 'the log was begun by another process at the same time';
      END IF;
    END IF;

    IF _keys ? 'voids' THEN
      DELETE FROM codes c WHERE c.job = _job AND c.seat = _keys->>'voids';
    END IF;
    IF _keys ? 'revoke' THEN
      UPDATE passes p SET revoked = 1 WHERE p.job = _job AND p.role = _keys->>'revoke' AND p.revoked = 0;
    END IF;
    IF _keys ? 'withdraw' THEN
      UPDATE passes p SET revoked = 2 WHERE p.token = _keys->>'withdraw' AND p.job = _job;
    END IF;
    IF _keys ? 'issue' THEN
      INSERT INTO passes (token, job, role)
        SELECT i->>'token', _job, i->>'role' FROM jsonb_array_elements(_keys->'issue') i;
    END IF;
    IF _keys ? 'code' THEN
      INSERT INTO codes (code, job, seat, expires_at)
        VALUES (_keys#>>'{code,code}', _job, _keys#>>'{code,seat}', (_keys#>>'{code,expiresAt}')::bigint)
        ON CONFLICT (${key}, seat) DO UPDATE SET code = excluded.code, expires_at = excluded.expires_at;
    END IF;

    IF _beside ? 'put' THEN
      INSERT INTO enclosures (job, seq, salt, content)
        VALUES (_job, (_beside#>>'{put,seq}')::integer, _beside#>>'{put,salt}', decode(_beside#>>'{put,content}', 'base64'));
    END IF;
    IF _beside ? 'remove' THEN
      DELETE FROM enclosures e WHERE e.job = _job AND e.seq = (_beside->>'remove')::integer;
    END IF;
    IF jsonb_array_length(_beside->'forget') > 0 THEN
      DELETE FROM names n WHERE n.job = _job
        AND n.seq IN (SELECT f::integer FROM jsonb_array_elements_text(_beside->'forget') f);
      DELETE FROM summaries s WHERE s.job = _job;
    END IF;
    RETURN jsonb_build_object('kind', 'stored');
  END $$;
`;

/** The numbers of signed heads have no gap, so processes add them one after the other. */
const ADD_SIGNED_HEADS = `
  CREATE FUNCTION add_signed_heads(_heads jsonb) RETURNS void LANGUAGE plpgsql AS $$
  BEGIN
    LOCK TABLE signed_heads IN SHARE ROW EXCLUSIVE MODE;
    INSERT INTO signed_heads (number, job, count, hash, at, key, signature)
      SELECT (SELECT coalesce(max(number), -1) FROM signed_heads) + h.n, h.head->>'job', (h.head->>'count')::integer,
        h.head->>'hash', (h.head->>'at')::bigint, h.head->>'key', h.head->>'signature'
      FROM jsonb_array_elements(_heads) WITH ORDINALITY h(head, n);
  END $$;
`;

/** Time stamps only of larger trees, also of two processes that ask at the same time. */
const ADD_STAMP = `
  CREATE FUNCTION stamps_grow() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    PERFORM pg_advisory_xact_lock(hashtext('ladderline: stamps'));
    IF NEW.size <= (SELECT max(size) FROM stamps) THEN
      RAISE EXCEPTION 'time stamps are only added: each is of a larger tree';
    END IF;
    RETURN NEW;
  END $$;
  CREATE TRIGGER stamps_grow BEFORE INSERT ON stamps FOR EACH ROW EXECUTE FUNCTION stamps_grow();
`;

/** A new database takes every step, one of version N those from the N-th on. A step that shipped never changes. */
export const STEPS: readonly string[] = [
  TABLES + APPEND_ONLY + LEASES + takeLease('job') + PROCESSES + append('job') + ADD_SIGNED_HEADS + ADD_STAMP,
  FIRMS + LOGS_OF_FIRMS + takeLease('job, firm') + append('job, firm') + FIGURES + grantFirm(),
  READS,
  TOTALS,
];
