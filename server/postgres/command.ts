import { resolve } from 'node:path';
import { Option } from 'commander';

/** Of every command that opens a database. */
export const passwordFileOption = (): Option =>
  new Option('--store-password-file <file>', 'that holds the password of the database')
    .default(undefined, 'PGPASSWORD is taken')
    .env('LADDERLINE_STORE_PASSWORD_FILE')
    .argParser((path) => resolve(path));
