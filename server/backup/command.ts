import { resolve } from 'node:path';
import { Command, Option } from 'commander';
import { printable } from '../../src/model/hidden.ts';
import { StoreFailure } from '../store/store.ts';

/** A command with a folder and the server's own choice of the data folder. */
export const folderCommand = (name: string): Command => dataCommand(name).argument('<folder>');

/** A command with the server's own choice of the data folder. */
export const dataCommand = (name: string): Command =>
  new Command(name).addOption(
    new Option('--data <folder>', 'data folder of the server')
      .default(resolve('data'), './data')
      .env('LADDERLINE_DATA')
      .argParser((text) => resolve(text)),
  );

/** Prints what was done, or one clear line for a failure that people can mend. */
export function runCommand(name: string, work: () => Promise<string[]>): void {
  work().then(
    (lines) => console.log(lines.map(printable).join('\n')),
    (error: Error) => {
      const isKnown = error instanceof StoreFailure || 'code' in error;
      console.error(isKnown ? printable(`${name}: ${error.message}`) : error);
      process.exitCode = 1;
    },
  );
}
