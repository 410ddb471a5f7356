import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Command } from 'commander';
import { runCommand } from '../backup/command.ts';
import { isDatabaseUrl } from '../postgres/address.ts';
import { passwordFileOption } from '../postgres/command.ts';
import { openUnused } from '../postgres/open.ts';
import { DATABASE_FILE, openDataFolder } from '../store/data-folder.ts';
import { noteRecordsHere } from '../store/records-elsewhere.ts';
import { type Store, StoreFailure } from '../store/store.ts';
import { newSummaryKey } from '../store/summary-key.ts';
import { copyStore } from './copy.ts';

const program = new Command('copy')
  .description(
    'Copies all records of a stopped server from a data folder to a PostgreSQL database, or back, and checks every hash there. Cut off, it goes on where it was when it is run again.',
  )
  .argument('<from>', 'data folder, or postgres://USER@HOST/DATABASE')
  .argument('<to>', 'the same; what is there already must be the beginning of what is copied')
  .addOption(passwordFileOption())
  .parse();

async function open(place: string): Promise<Store> {
  if (!isDatabaseUrl(place)) return openDataFolder(resolve(place));
  const { storePasswordFile: passwordFile } = program.opts<{ storePasswordFile?: string }>();
  // Summaries are not copied, so none is sealed.
  return openUnused({ url: place, passwordFile }, newSummaryKey());
}

runCommand('copy', async () => {
  const [source = '', target = ''] = program.args;
  if (!isDatabaseUrl(source) && !existsSync(join(resolve(source), DATABASE_FILE)))
    throw new StoreFailure(`there is no database in ${resolve(source)}: name the data folder of the server.`);
  const from = await open(source);
  const to = await open(target).catch(async (error: unknown) => {
    await from.close();
    throw error;
  });
  try {
    const { logs, entries, brought, enclosures, signedHeads } = await copyStore(from, to);
    if (!isDatabaseUrl(target)) noteRecordsHere(resolve(target));
    return [
      `Copied:    ${logs} logs with ${entries} entries, every hash checked where they are now; ${brought} of them were brought now`,
      `Beside:    ${enclosures} pictures and sounds, ${signedHeads} signed heads`,
      'Keys:      not copied: give the server the data folder that it had, or copy signing.key, accounts.json and the passphrase.',
      'Join codes are not copied: the panel shows a new one.',
    ];
  } finally {
    await from.close();
    await to.close();
  }
});
