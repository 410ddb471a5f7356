import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { pino } from 'pino';
import { dataCommand, runCommand } from '../backup/command.ts';
import { databaseIn } from '../backup/folder.ts';
import { SigningKey } from '../notary/ed25519.ts';
import { Notary } from '../notary/notary.ts';
import { passwordFileOption, storeOption } from '../postgres/command.ts';
import { openPostgres } from '../postgres/open.ts';
import { systemClock } from '../process/clock.ts';
import { accountsOf } from '../store/accounts.ts';
import { openDataFolder } from '../store/data-folder.ts';
import { refuseElsewhere } from '../store/records-elsewhere.ts';
import { type Store, StoreFailure } from '../store/store.ts';
import { summaryKeyOf } from '../store/summary-key.ts';
import { exportFirm } from './firm.ts';
import { ExportFolder } from './folder.ts';
import { exportPerson } from './person.ts';

interface Options {
  data: string;
  store?: string;
  storePasswordFile?: string;
  person?: string;
}

const program = dataCommand('export')
  .description(
    'Writes all that a firm has into a new folder: records, pictures, signed heads, accounts, who read what. With --person, all that names this person. The server is stopped, unless its records are in a database.',
  )
  .argument('<folder>', 'new or empty')
  .option('--person <name>', 'as it was typed; case and spaces do not matter')
  .addOption(storeOption('the PostgreSQL database of the server'))
  .addOption(passwordFileOption())
  .addHelpText('after', '\nnpm run verify -- FOLDER checks what was written, here or anywhere else.')
  .parse();

async function open({ data, store: url, storePasswordFile: passwordFile }: Options) {
  if (url !== undefined) {
    const store = await openPostgres({ url, passwordFile }, summaryKeyOf(data).key);
    return { store, firm: store.firm };
  }
  refuseElsewhere(data, (database) => `name it with --store ${database}.`);
  if (!existsSync(databaseIn(data)))
    throw new StoreFailure(
      `there is no database in ${data}: name the data folder of the server with --data.`,
    );
  return { store: openDataFolder(data), firm: '' };
}

async function ofFirm(store: Store, firm: string, data: string, to: ExportFolder): Promise<string[]> {
  const log = pino({ enabled: false });
  const key = SigningKey.ofFolder(data);
  const notary = new Notary({ store, key, clock: systemClock, log, publish: [] });
  try {
    const proofOf = (job: string) => notary.proofOf(job);
    const book = accountsOf(data).read();
    const made = await exportFirm({ store, book, firm, proofOf, at: Date.now() }, to);
    const damaged = made.records.filter((record) => record.damaged);
    if (damaged.length + made.lost.length > 0) process.exitCode = 1;
    return [
      ...damaged.map(({ head }) => `DAMAGED:  the log ${head.job}. It is in the export as it is.`),
      ...made.lost.map((log) => `LOST:     the log ${log}: no entry of it is left.`),
      `Written:  ${made.records.length} records, ${made.signedHeads} signed heads, ${made.stamps} time stamps, ${made.reads} lines of who read what.`,
      'Not in it: keys and links, which open something.',
    ];
  } finally {
    await notary.close();
  }
}

async function ofPerson(store: Store, name: string, data: string, to: ExportFolder): Promise<string[]> {
  const book = accountsOf(data).read();
  const { records, reads } = await exportPerson({ store, book, name, at: Date.now() }, to);
  const entries = records.reduce(
    (n, { beside, inside, text }) => n + new Set([...beside, ...inside, ...text]).size,
    0,
  );
  return [
    `Written:  ${entries} entries of ${records.length} records that hold the name, ${reads} lines of what was read with it, and the account, where there is one.`,
    'Free text that names the person otherwise (a nickname, a spelling mistake) is not found, and pictures and sounds are not searched.',
  ];
}

runCommand('export', async () => {
  const options = program.opts<Options>();
  const { data, person } = options;
  const path = resolve(program.args[0] ?? '');
  const { store, firm } = await open(options);
  try {
    const to = ExportFolder.make(path);
    const lines = await (person === undefined
      ? ofFirm(store, firm, data, to)
      : ofPerson(store, person.trim(), data, to));
    return [...lines, `Folder:   ${path}, for your eyes only. Check it: npm run verify -- ${path}`];
  } finally {
    await store.close();
  }
});
