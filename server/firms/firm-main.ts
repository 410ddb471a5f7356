import { Command } from 'commander';
import { runCommand } from '../backup/command.ts';
import { passwordFileOption, storeOption } from '../postgres/command.ts';
import { openTables } from '../postgres/open.ts';
import { Firms } from './firms.ts';

const program = new Command('firm')
  .description(
    'Firms that share one PostgreSQL database, each with a login of its own, and kept apart by the database. Where one firm has it for itself, none is needed.',
  )
  .addHelpText(
    'after',
    `
Each firm has a server of its own (a process, or several), with its own data folder, under its own name:
  CREATE ROLE north LOGIN PASSWORD '…';                     in the database, as who may make logins
  npm run firm -- add "North Example" north --store postgres://OWNER@HOST/DATABASE
  npm start -- --data north --store postgres://north@HOST/DATABASE --store-password-file FILE
docs/firms.md has more.`,
  );

const command = (name: string) =>
  program
    .command(name)
    .addOption(storeOption('the database, with the owner of its tables').makeOptionMandatory())
    .addOption(passwordFileOption());

interface Options {
  store: string;
  storePasswordFile?: string;
}

command('add')
  .description('a firm, whose server comes with this login')
  .argument('<name>', 'of the firm')
  .argument('<login>', 'of the database; one that no other firm has')
  .action((name: string, login: string, options: Options) =>
    run(options, async (firms) => {
      await firms.add({ name, login });
      return [`${name}: who comes with the login ${login} has the records of this firm, and no others.`];
    }),
  );

command('list')
  .description('every firm and its login')
  .action((options: Options) =>
    run(options, async (firms) => {
      const all = await firms.all();
      if (all.length === 0) return ['No firms: who owns the tables has the database for itself.'];
      return all.map(({ name, login }) => `${name}  (login ${login})`);
    }),
  );

command('withdraw')
  .description('its login is shown nothing from now on; what the firm has stays')
  .argument('<name>')
  .action((name: string, options: Options) =>
    run(options, async (firms) => {
      const { login } = await firms.withdraw(name);
      return [`${name}: the login ${login} is shown nothing from now on. Its records stay.`];
    }),
  );

program.parse();

function run({ store: url, storePasswordFile }: Options, work: (firms: Firms) => Promise<string[]>): void {
  runCommand('firm', async () => {
    const database = await openTables({ url, passwordFile: storePasswordFile });
    try {
      return await work(new Firms(database));
    } finally {
      await database.close();
    }
  });
}
