import { readFileSync } from 'node:fs';
import { StoreFailure } from '../store/store.ts';

/** Where the database is, and how one comes in. */
export interface DatabaseAddress {
  /** `postgres://user@host:port/database`; `?host=/folder` for a unix socket. Without a password. */
  readonly url: string;
  /** Read anew for each connection, so that it can be changed while the server runs. Without it, PGPASSWORD is taken. */
  readonly passwordFile?: string | undefined;
  /** The schema in it that holds the tables. */
  readonly schema?: string | undefined;
}

export const DEFAULT_SCHEMA = 'ladderline';

export const isDatabaseUrl = (text: string): boolean => /^postgres(ql)?:\/\//.test(text);

/** For people, and for logs. */
export const nameOf = ({ url }: DatabaseAddress): string => url.replace(/\?.*$/, '');

/** Why this cannot be the address of a database; undefined where it can. A password would show in the list of processes. */
export function addressFault(url: string): string | undefined {
  if (!isDatabaseUrl(url)) return 'It must be like postgres://user@host/database.';
  const [, authority = ''] = /^\w+:\/\/([^/?#]*)/.exec(url) ?? [];
  const isOpen = authority.split('@')[0]?.includes(':') && authority.includes('@');
  if (isOpen || /[?&]password=/.test(url))
    return 'It must not hold the password, which others could see: set PGPASSWORD, or name a file with --store-password-file.';
  return undefined;
}

/** Throws `StoreFailure`. */
export function passwordIn(file: string): string {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    throw new StoreFailure(
      `the password of the database cannot be read from ${file} (${(error as NodeJS.ErrnoException).code}): see to its permissions.`,
    );
  }
}
