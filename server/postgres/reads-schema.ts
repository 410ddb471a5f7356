import { LEAST_KEPT_DAYS } from '../store/reads.ts';
import { FIRM, grantFirm, OURS_FIRST, ownRows } from './firms-schema.ts';

export const READ_GRANTS = [
  'SELECT, INSERT ON reads',
  'EXECUTE ON FUNCTION forget_reader(text), end_reads(bigint)',
];

/**
 * Who read what. A firm's login adds rows and reads them, and has no right to change or delete one: a name is forgotten, and what is
 * old enough ends, only by these two functions, which no caller talks into more.
 */
export const READS = `
  ${OURS_FIRST}
  CREATE TABLE reads (
    ${FIRM},
    number bigint GENERATED ALWAYS AS IDENTITY,
    hour bigint NOT NULL,
    log text COLLATE "C" NOT NULL,
    what text COLLATE "C" NOT NULL,
    role text COLLATE "C" NOT NULL,
    key text COLLATE "C" NOT NULL,
    reader text COLLATE "C" NOT NULL,
    name text COLLATE "C" NOT NULL,
    PRIMARY KEY (firm, number),
    UNIQUE (firm, hour, log, what, key, reader, name)
  );
  CREATE INDEX reads_by_log ON reads (firm, log, number);
  CREATE INDEX reads_by_name ON reads (firm, name) WHERE name <> '';
  ${ownRows('reads')}
  CREATE TRIGGER reads_stay BEFORE UPDATE ON reads FOR EACH ROW WHEN (NEW.reader <> 'forgotten' OR NEW.name <> ''
      OR (NEW.hour, NEW.log, NEW.what, NEW.key) <> (OLD.hour, OLD.log, OLD.what, OLD.key))
    EXECUTE FUNCTION refuse('who read what stays: only a name is forgotten');
  CREATE TRIGGER reads_whole BEFORE TRUNCATE ON reads
    EXECUTE FUNCTION refuse('who read what stays: only a name is forgotten');

  -- The firm is named in each statement: where a superuser owns the tables, the rules for rows do not hold in here.
  CREATE FUNCTION forget_reader(_name text) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
  BEGIN
    -- Where the same was read by somebody else who is forgotten, one line says it.
    DELETE FROM reads r WHERE r.firm = current_firm() AND r.name = _name AND EXISTS (
      SELECT FROM reads o WHERE o.firm = r.firm AND o.hour = r.hour AND o.log = r.log AND o.what = r.what AND o.key = r.key
        AND o.reader = 'forgotten');
    UPDATE reads r SET reader = 'forgotten', name = '' WHERE r.firm = current_firm() AND r.name = _name;
  END $$;

  CREATE FUNCTION end_reads(_before bigint) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
  BEGIN
    DELETE FROM reads r WHERE r.firm = current_firm()
      AND r.hour < least(_before, 1000 * extract(epoch FROM now() - interval '${LEAST_KEPT_DAYS} days')::bigint);
  END $$;
  REVOKE EXECUTE ON FUNCTION forget_reader(text), end_reads(bigint) FROM PUBLIC;
  ${grantFirm(READ_GRANTS)}
`;
