import { resolve } from 'node:path';
import { Option } from 'commander';

/** Where the records are. `about`: what the command does with them. */
export const storeOption = (about: string): Option =>
  new Option('--store <url>', about).default(undefined, 'a file in the data folder').env('LADDERLINE_STORE');

/** Of every command that opens a database. */
export const passwordFileOption = (): Option =>
  new Option('--store-password-file <file>', 'that holds the password of the database')
    .default(undefined, 'PGPASSWORD is taken')
    .env('LADDERLINE_STORE_PASSWORD_FILE')
    .argParser((path) => resolve(path));
