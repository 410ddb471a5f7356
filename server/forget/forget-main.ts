import { InvalidArgumentError } from 'commander';
import { dataCommand, runCommand } from '../backup/command.ts';
import { putAsideIn } from '../backup/restore.ts';
import { passwordFileOption, storeOption } from '../postgres/command.ts';
import { accountsOf } from '../store/accounts.ts';
import { forgetIn, forgetInDatabase } from './forget.ts';
import { forgetHolder } from './holder.ts';
import { forgetLines } from './report.ts';

const SHORTEST = 3;
const LONGEST = 500;

/** Throws an error of commander, which it prints. */
function reason(text: string): string {
  const { length } = text.trim();
  if (length < SHORTEST || length > LONGEST)
    throw new InvalidArgumentError(`It must have ${SHORTEST} to ${LONGEST} letters.`);
  return text.trim();
}

interface Options {
  data: string;
  store?: string;
  storePasswordFile?: string;
  yes: boolean;
  reason: string;
}

const program = dataCommand('forget')
  .description(
    'Deletes the name of a person from all records of a stopped server and from who read what, and their account. Without --yes it only says where it stands.',
  )
  .argument('<name>', 'as it was typed; case and spaces do not matter')
  .addOption(storeOption('the PostgreSQL database of the server'))
  .addOption(passwordFileOption())
  .option('--yes', 'do it: what is deleted does not come back', false)
  .option(
    '--reason <text>',
    'goes into each record; do not write the name',
    reason,
    'The person asked for it',
  )
  .parse();

runCommand('forget', async () => {
  const { data, store, storePasswordFile, yes, reason: why } = program.opts<Options>();
  const name = (program.args[0] ?? '').trim();
  const wish = { name, why, isSure: yes, at: Date.now() };
  const { records, readers } = await (store === undefined
    ? forgetIn(data, wish)
    : forgetInDatabase({ url: store, passwordFile: storePasswordFile }, data, wish));
  const holders = forgetHolder(accountsOf(data), name, yes);
  const { lines, isDone } = forgetLines(name, records, yes, { holders, readers, copies: putAsideIn(data) });
  if (!isDone) process.exitCode = 1;
  return lines;
});
