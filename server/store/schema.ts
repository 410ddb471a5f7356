/** Written into the database file's header, so that another program's file is not taken for ours. "LDLN". */
export const APPLICATION_ID = 0x4c444c4e;

/**
 * `entries.body` is the exact text its hash is taken over. The triggers make the log append-only for every
 * program that opens the file as a database; whoever can write the file itself is caught by the chain.
 */
const LOGS_AND_KEYS = `
  CREATE TABLE entries (
    job TEXT NOT NULL,
    seq INTEGER NOT NULL,
    ref TEXT,
    hash TEXT NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (job, seq)
  ) STRICT, WITHOUT ROWID;
  CREATE UNIQUE INDEX entries_by_ref ON entries (job, ref) WHERE ref IS NOT NULL;

  CREATE TABLE heads (
    number INTEGER PRIMARY KEY,
    job TEXT NOT NULL UNIQUE,
    count INTEGER NOT NULL,
    hash TEXT NOT NULL
  ) STRICT;

  CREATE TABLE passes (
    token TEXT PRIMARY KEY,
    job TEXT NOT NULL,
    role TEXT NOT NULL,
    revoked INTEGER NOT NULL DEFAULT 0
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX passes_by_role ON passes (job, role);

  CREATE TABLE codes (
    code TEXT PRIMARY KEY,
    job TEXT NOT NULL,
    seat TEXT NOT NULL,
    expires_at INTEGER NOT NULL,
    UNIQUE (job, seat)
  ) STRICT, WITHOUT ROWID;

  CREATE TRIGGER entries_stay BEFORE UPDATE ON entries
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: entries are never changed'); END;
  CREATE TRIGGER entries_remain BEFORE DELETE ON entries
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: entries are never removed'); END;
  CREATE TRIGGER heads_grow BEFORE UPDATE ON heads WHEN NEW.count <= OLD.count OR NEW.job <> OLD.job
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: a head only moves on'); END;
  CREATE TRIGGER heads_remain BEFORE DELETE ON heads
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: a head is never removed'); END;
`;

/** As shipped with version 2 of the database; `SUMMARIES` takes its place. */
const ACCOUNTS = `
  CREATE TABLE accounts (
    job TEXT PRIMARY KEY,
    hash TEXT NOT NULL,
    body TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;
`;

/** Worked out from the logs, and worth nothing without them. `hash`: of the last entry it was worked out from. */
const SUMMARIES = `
  DROP TABLE accounts;
  CREATE TABLE summaries (
    job TEXT PRIMARY KEY,
    hash TEXT NOT NULL,
    body TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;
`;

/** `count`: of the log it was worked out from. `seal`: who has not the server's key cannot make it. */
const SEALED_SUMMARIES = `
  DROP TABLE summaries;
  CREATE TABLE summaries (
    job TEXT PRIMARY KEY,
    count INTEGER NOT NULL,
    hash TEXT NOT NULL,
    body TEXT NOT NULL,
    seal TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;
`;

/** `number`: from 0 on, without a gap: the places in the tree over all of them. */
const SIGNED_HEADS = `
  CREATE TABLE signed_heads (
    number INTEGER PRIMARY KEY,
    job TEXT NOT NULL,
    count INTEGER NOT NULL,
    hash TEXT NOT NULL,
    at INTEGER NOT NULL,
    key TEXT NOT NULL,
    signature TEXT NOT NULL
  ) STRICT;
  CREATE INDEX signed_heads_by_job ON signed_heads (job);
  CREATE TRIGGER signed_heads_stay BEFORE UPDATE ON signed_heads
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: signed heads are never changed'); END;
  CREATE TRIGGER signed_heads_remain BEFORE DELETE ON signed_heads
  BEGIN SELECT RAISE(ABORT, 'the log is append-only: signed heads are never removed'); END;
`;

/**
 * What lies beside an entry that names its hash, and can be removed. `content` is never changed: who does it otherwise is
 * caught by the hash in the chain.
 */
const ENCLOSURES = `
  CREATE TABLE enclosures (
    job TEXT NOT NULL,
    seq INTEGER NOT NULL,
    salt TEXT NOT NULL,
    content BLOB NOT NULL,
    PRIMARY KEY (job, seq)
  ) STRICT;
  CREATE TRIGGER enclosures_stay BEFORE UPDATE ON enclosures
  BEGIN SELECT RAISE(ABORT, 'what lies beside the log is removed or stays: it is never changed'); END;
  CREATE TRIGGER enclosures_once BEFORE INSERT ON enclosures
  WHEN EXISTS (SELECT 1 FROM enclosures WHERE job = NEW.job AND seq = NEW.seq)
  BEGIN SELECT RAISE(ABORT, 'what lies beside the log is removed or stays: it is never changed'); END;
`;

/**
 * What names people in an entry, as canonical JSON, with its salt. It can be deleted; the hash in the entry stays, and who
 * changes it otherwise is caught by that.
 */
const NAMES = `
  CREATE TABLE names (
    job TEXT NOT NULL,
    seq INTEGER NOT NULL,
    salt TEXT NOT NULL,
    names TEXT NOT NULL,
    PRIMARY KEY (job, seq)
  ) STRICT, WITHOUT ROWID;
  CREATE TRIGGER names_stay BEFORE UPDATE ON names
  BEGIN SELECT RAISE(ABORT, 'what lies beside the log is removed or stays: it is never changed'); END;
  CREATE TRIGGER names_once BEFORE INSERT ON names
  WHEN EXISTS (SELECT 1 FROM names WHERE job = NEW.job AND seq = NEW.seq)
  BEGIN SELECT RAISE(ABORT, 'what lies beside the log is removed or stays: it is never changed'); END;
`;

/** `size`: of the tree that was stamped. `token`: of RFC 3161, base64. */
const STAMPS = `
  CREATE TABLE stamps (
    size INTEGER PRIMARY KEY,
    root TEXT NOT NULL,
    at INTEGER NOT NULL,
    key TEXT NOT NULL,
    signature TEXT NOT NULL,
    nonce TEXT NOT NULL,
    token TEXT NOT NULL
  ) STRICT;
  CREATE TRIGGER stamps_grow BEFORE INSERT ON stamps WHEN NEW.size <= (SELECT max(size) FROM stamps)
  BEGIN SELECT RAISE(ABORT, 'time stamps are only added: each is of a larger tree'); END;
  CREATE TRIGGER stamps_stay BEFORE UPDATE ON stamps
  BEGIN SELECT RAISE(ABORT, 'time stamps are only added: they are never changed'); END;
  CREATE TRIGGER stamps_remain BEFORE DELETE ON stamps
  BEGIN SELECT RAISE(ABORT, 'time stamps are only added: they are never removed'); END;
`;

/** `log`, `role`, `key`, `name`: '' where there is nothing to say. Only a name that is forgotten changes a row. */
const READS = `
  CREATE TABLE reads (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    hour INTEGER NOT NULL,
    log TEXT NOT NULL,
    what TEXT NOT NULL,
    role TEXT NOT NULL,
    key TEXT NOT NULL,
    reader TEXT NOT NULL,
    name TEXT NOT NULL,
    UNIQUE (hour, log, what, key, reader, name)
  ) STRICT;
  CREATE INDEX reads_by_log ON reads (log, number);
  CREATE INDEX reads_by_name ON reads (name) WHERE name <> '';
  CREATE TRIGGER reads_stay BEFORE UPDATE ON reads WHEN NEW.reader <> 'forgotten' OR NEW.name <> ''
    OR NEW.hour <> OLD.hour OR NEW.log <> OLD.log OR NEW.what <> OLD.what OR NEW.key <> OLD.key
  BEGIN SELECT RAISE(ABORT, 'who read what stays: only a name is forgotten'); END;
`;

/** A new database takes every step, one of version N those from the N-th on. A step that shipped never changes. */
export const STEPS: readonly string[] = [
  LOGS_AND_KEYS,
  ACCOUNTS,
  SUMMARIES,
  SEALED_SUMMARIES,
  SIGNED_HEADS,
  ENCLOSURES,
  NAMES,
  STAMPS,
  READS,
];
export const SCHEMA_VERSION = STEPS.length;
