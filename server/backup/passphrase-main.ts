import { existsSync } from 'node:fs';
import { stdin, stdout } from 'node:process';
import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { isLongEnough, LEAST_LETTERS, removePassphrase, setPassphrase } from '../store/passphrase.ts';
import { StoreFailure } from '../store/store.ts';
import { dataCommand, runCommand } from './command.ts';

const program = dataCommand('passphrase')
  .description(
    'Sets the passphrase that is needed to open sites and jobs. It is asked for, or read from standard input. Holds at once, also while the server runs.',
  )
  .option('--remove', 'let anybody open sites and jobs again')
  .parse();

/** One line, which is not shown while it is typed. */
async function asked(): Promise<string> {
  if (stdin.isTTY) stdout.write('New passphrase: ');
  const unseen = new Writable({ write: (_chunk, _encoding, done) => done() });
  const lines = createInterface({ input: stdin, output: unseen, terminal: stdin.isTTY ?? false });
  for await (const line of lines) {
    lines.close();
    if (stdin.isTTY) stdout.write('\n');
    return line;
  }
  return '';
}

runCommand('passphrase', async () => {
  const { data, remove } = program.opts<{ data: string; remove?: boolean }>();
  if (!existsSync(data)) throw new StoreFailure(`there is no data folder ${data}: name it with --data.`);
  if (remove) {
    removePassphrase(data);
    return ['Anybody who reaches the server may open sites and jobs.'];
  }
  const passphrase = await asked();
  if (!isLongEnough(passphrase))
    throw new StoreFailure(`it is too short: take ${LEAST_LETTERS} letters or more, best a few words.`);
  await setPassphrase(data, passphrase);
  return ['From now on the passphrase is needed to open a site or a job.'];
});
