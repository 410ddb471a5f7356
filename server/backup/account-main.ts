import { existsSync } from 'node:fs';
import { isIP } from 'node:net';
import { Argument, InvalidArgumentError, Option } from 'commander';
import { AccountName, AccountRole } from '../../src/model/account.ts';
import { isSameName } from '../../src/model/person.ts';
import { roleMayText } from '../../src/phrases/accounts.ts';
import { AccessKind, invitationPath } from '../../src/protocol/accounts.ts';
import { digest, newToken } from '../guard/secrets.ts';
import { ownNames } from '../network/addresses.ts';
import {
  type AccountBook,
  type Changed,
  invite,
  lastUse,
  renew,
  requireAccounts,
  stillGood,
  withdraw,
  withdrawInvitation,
} from '../store/account-book.ts';
import { type AccountsFile, accountsOf } from '../store/accounts.ts';
import { passphraseOf, removePassphrase } from '../store/passphrase.ts';
import { StoreFailure } from '../store/store.ts';
import { dataCommand, runCommand } from './command.ts';

const MODES: Record<AccessKind, string> = {
  open: 'Anybody who reaches the server may open sites and jobs.',
  passphrase: 'Who knows the passphrase may open sites and jobs.',
  accounts: 'Who has an account may open sites and jobs, and sign, as the role allows.',
};

const moment = (at: number): string => `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')} UTC`;

const linkLines = (who: string, url: string, secret: string): string[] => [
  `${who}: give this link to them alone. It works once, and for a day.`,
  `  ${url}${invitationPath(secret)}`,
];

const program = dataCommand('account')
  .description(
    'Who may open sites and jobs, and sign: invites people, lists and withdraws their accounts. Holds at once, also while the server runs.',
  )
  .addHelpText(
    'after',
    `
Roles:
${AccountRole.options.map((role) => `  ${role.padEnd(14)} ${roleMayText(role)}`).join('\n')}

The first administrator is invited here:
  npm run account -- invite "NAME" --role administrator
  npm run account -- mode accounts
A passkey belongs to the name under which people open the server, never to an address of digits: give that name with
--at, once, and keep it. On this machine alone, http://localhost:8470 works.`,
  );

/** Throws an error of commander, which it prints. */
function toOrigin(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url?.protocol !== 'https:' && url?.protocol !== 'http:')
    throw new InvalidArgumentError('It must be an address that begins with https:// or http://.');
  if (isIP(url.hostname.replace(/^\[|\]$/g, '')) !== 0)
    throw new InvalidArgumentError('A passkey needs a name, not an address of digits.');
  if (url.protocol === 'http:' && url.hostname !== 'localhost')
    throw new InvalidArgumentError('Passkeys work over https only, but on localhost.');
  return url.origin;
}

const at = () =>
  new Option('--at <url>', 'how people open the server, for the link')
    .default(`https://${ownNames()[1]}:8470`, 'this machine’s own name')
    .argParser(toOrigin);
const name = () => new Argument('<name>', 'as it is to stand under signatures');

program
  .command('invite')
  .description('prints a link that makes one passkey, works once and for a day')
  .addArgument(name())
  .addOption(new Option('--role <role>').choices(AccountRole.options).default('technician'))
  .addOption(at())
  .action((given: string, { role, at }: { role: AccountRole; at: string }) =>
    run((file, now) => {
      const parsed = AccountName.safeParse(given);
      if (!parsed.success) throw new StoreFailure('a name has 1 to 80 letters, and none that nobody sees.');
      const secret = newToken();
      must(file.change((book) => invite(book, { name: parsed.data, role }, digest(secret), now)));
      return linkLines(`${parsed.data}, ${role}`, at, secret);
    }),
  );

program
  .command('renew')
  .description(
    'for who has lost every device: withdraws the account and prints a new link, with the same role',
  )
  .addArgument(name())
  .addOption(at())
  .action((given: string, { at }: { at: string }) =>
    run((file, now) => {
      const secret = newToken();
      const { name, role, id } = named(file.read().accounts, given);
      must(file.change((book) => renew(book, id, digest(secret), now)));
      return linkLines(`${name}, ${role}`, at, secret);
    }),
  );

program
  .command('list')
  .description('everybody who has an account or an invitation')
  .action(() => run((file, now) => listLines(file.read(), now)));

program
  .command('withdraw')
  .description('from now on the account, or the invitation, opens nothing')
  .addArgument(name())
  .action((given: string) =>
    run((file, now) => {
      const book = file.read();
      const invited = stillGood(book, now).find((one) => isSameName(one.name, given));
      const account = invited ? undefined : named(book.accounts, given);
      must(
        file.change((book) =>
          account ? withdraw(book, account.id) : withdrawInvitation(book, invited?.digest ?? ''),
        ),
      );
      return [`${(account ?? invited)?.name} is withdrawn.`];
    }),
  );

program
  .command('mode')
  .description('who may open sites and jobs: anybody (open), who knows the passphrase, or who has an account')
  .addArgument(new Argument('[mode]').choices(AccessKind.options))
  .action((mode: AccessKind | undefined) =>
    run((file, now) => {
      const { data } = program.opts<{ data: string }>();
      const hasPassphrase = passphraseOf(data).isSet();
      if (mode === undefined) {
        const kind = file.read().required ? 'accounts' : hasPassphrase ? 'passphrase' : 'open';
        return [MODES[kind]];
      }
      if (mode === 'passphrase' && !hasPassphrase)
        throw new StoreFailure('no passphrase is set: set one first (npm run passphrase).');
      must(
        file.change((book) =>
          mode === 'accounts'
            ? requireAccounts(book, now)
            : { kind: 'changed', book: { ...book, required: false } },
        ),
      );
      if (mode === 'open') removePassphrase(data);
      return [MODES[mode]];
    }),
  );

program.parse();

function run(work: (file: AccountsFile, now: number) => string[]): void {
  const { data } = program.opts<{ data: string }>();
  runCommand('account', async () => {
    if (!existsSync(data)) throw new StoreFailure(`there is no data folder ${data}: name it with --data.`);
    return work(accountsOf(data), Date.now());
  });
}

function must(outcome: Changed): void {
  if (outcome.kind === 'refused') throw new StoreFailure(outcome.text);
}

function named<T extends { name: string }>(all: readonly T[], given: string): T {
  const found = all.find((one) => isSameName(one.name, given));
  if (!found) throw new StoreFailure(`there is no account of ${given}: npm run account -- list.`);
  return found;
}

function listLines(book: AccountBook, now: number): string[] {
  const lines = [
    ...book.accounts.map((account) => {
      const { name, role, passkeys } = account;
      const used = lastUse(account);
      const last = used === undefined ? 'not signed in again yet' : `last signed in ${moment(used)}`;
      return `${name}, ${role}, ${passkeys.length} ${passkeys.length === 1 ? 'passkey' : 'passkeys'}, ${last}`;
    }),
    ...stillGood(book, now).map(
      ({ name, role, until }) => `${name}, ${role}, invited until ${moment(until)}`,
    ),
  ];
  return lines.length > 0 ? lines : ['Nobody has an account or an invitation.'];
}
