import { resolve } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import { AccountRole } from '../src/model/account.ts';
import { SIGNED_IN_PATH } from '../src/protocol/sso.ts';
import { Callers, type ProxyHeader } from './guard/callers.ts';
import { addressFault } from './postgres/address.ts';
import { passwordFileOption, storeOption } from './postgres/command.ts';
import { DEFAULT_MODEL_FOLDER, VERSION } from './process/program.ts';
import { LEAST_KEPT_DAYS } from './store/reads.ts';
import { LOG_LEVELS } from './telemetry/logger.ts';
import { SYNTHESISER } from './voice/synthesiser.ts';

export interface Options {
  port: number;
  host: string;
  name: string[];
  /** With `.local`. */
  localName?: string;
  trustProxy: string[];
  proxyHeader: ProxyHeader;
  data: string;
  /** The address of a database; undefined: a file in the data folder. */
  store?: string;
  rulesThreads: number;
  /** The address by which the provider calls itself. */
  ssoFrom?: string;
  ssoClient?: string;
  ssoSecretFile?: string;
  ssoScopes: string;
  ssoClaim: string;
  /** Which value of the claim stands for which role. */
  ssoRoles: Map<string, AccountRole>;
  ssoName?: string;
  storePasswordFile?: string;
  peer?: string;
  otlp?: string;
  speechAt?: string[];
  speechPasswordFile?: string;
  tls: 'own' | 'off' | 'files';
  cert?: string;
  key?: string;
  speech: 'on' | 'off';
  model: string;
  voice: 'on' | 'off';
  headsFile?: string;
  headsTo?: string;
  headsMail?: string;
  stampFrom?: string;
  stampAuthority?: string;
  /** Minutes. */
  stampEvery: number;
  /** Megabytes of 10^6 bytes. */
  diskLeast: number;
  /** Days; undefined: for ever. */
  keepPictures?: number;
  /** Days; undefined: for ever. */
  keepNames?: number;
  /** Days. */
  keepReads: number;
  logLevel: string;
}

function toPort(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65535)
    throw new InvalidArgumentError('It must be a number from 0 to 65535.');
  return port;
}

function toMegabytes(text: string): number {
  if (!/^\d{1,9}$/.test(text))
    throw new InvalidArgumentError('It must be a whole number of megabytes, such as 500.');
  return Number(text);
}

function toDays(text: string): number {
  if (!/^[1-9]\d{0,4}$/.test(text))
    throw new InvalidArgumentError('It must be a whole number of days, 1 or more.');
  return Number(text);
}

function toReadDays(text: string): number {
  const days = toDays(text);
  if (days < LEAST_KEPT_DAYS)
    throw new InvalidArgumentError(`It must be a whole number of days, ${LEAST_KEPT_DAYS} or more.`);
  return days;
}

function toMinutes(text: string): number {
  const minutes = Number(text);
  if (!/^\d+$/.test(text) || minutes < 1 || minutes > 1440)
    throw new InvalidArgumentError('It must be a whole number of minutes, 1 to 1440.');
  return minutes;
}

function toThreads(text: string): number {
  const threads = Number(text);
  if (!/^\d+$/.test(text) || threads > 64)
    throw new InvalidArgumentError('It must be a whole number, 0 to 64.');
  return threads;
}

function toNames(text: string): string[] {
  const names = text.split(',').map((name) => name.trim());
  if (!names.every((name) => /^[a-z0-9]([a-z0-9._-]*[a-z0-9])?$/i.test(name)))
    throw new InvalidArgumentError('It must be names like ladder.firm.example, with commas between.');
  return names;
}

function toLocalName(text: string): string {
  const label = text.replace(/\.local$/i, '').toLowerCase();
  if (!/^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(label))
    throw new InvalidArgumentError('It must be one name of letters, digits and hyphens, such as ladderline.');
  return `${label}.local`;
}

function toProxies(text: string): string[] {
  const proxies = text.split(',').map((proxy) => proxy.trim());
  try {
    new Callers(proxies);
  } catch (error) {
    throw new InvalidArgumentError((error as Error).message);
  }
  return proxies;
}

const toPath = (text: string): string => resolve(text);

function toUrl(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url?.protocol !== 'https:' && url?.protocol !== 'http:')
    throw new InvalidArgumentError('It must be an address that begins with https:// or http://.');
  return text;
}

function toStore(text: string): string {
  const fault = addressFault(text);
  if (fault !== undefined) throw new InvalidArgumentError(fault);
  return text;
}

function toRoles(text: string): Map<string, AccountRole> {
  const pairs = text.split(',').map((pair) => pair.trim().split(/=(?=[^=]*$)/));
  const roles = new Map(
    pairs.map(([value = '', role = '']) => [value.trim(), AccountRole.safeParse(role.trim())]),
  );
  if ([...roles].some(([value, role]) => value === '' || !role.success))
    throw new InvalidArgumentError(
      `It must be like fitters=technician,leads=supervisor, with ${AccountRole.options.join(', ')}.`,
    );
  return new Map([...roles].map(([value, role]) => [value, AccountRole.parse(role.data)]));
}

function toMail(text: string): string {
  if (!/^[^\s@?&]+@[^\s@?&]+$/.test(text)) throw new InvalidArgumentError('It must be one mail address.');
  return text;
}

/** Reads flags and environment. On a mistake, and for --help and --version, it prints and ends the process. */
export function readOptions(argv: readonly string[]): Options {
  const program = new Command('ladderline')
    .description('Serves the phones of a beam detector crew, and keeps the records of their jobs.')
    .version(VERSION)
    .allowExcessArguments(false)
    .addOption(
      new Option('--port <number>', 'port to listen on; 0: any free port')
        .default(8470)
        .env('LADDERLINE_PORT')
        .argParser(toPort),
    )
    .addOption(
      new Option('--host <address>', 'address to listen on; 127.0.0.1: only this machine')
        .default('0.0.0.0')
        .env('LADDERLINE_HOST'),
    )
    .addOption(
      new Option('--name <list>', 'names under which phones reach the server, with commas; see below')
        .default([], 'the machine’s own, and those in its certificate')
        .env('LADDERLINE_NAME')
        .argParser(toNames),
    )
    .addOption(
      new Option('--local-name <name>', 'a name in .local by which phones on this network find it; see below')
        .default(undefined, 'none')
        .env('LADDERLINE_LOCAL_NAME')
        .argParser(toLocalName),
    )
    .addOption(
      new Option('--trust-proxy <list>', 'addresses or networks of proxies before the server, with commas')
        .default([], 'none')
        .env('LADDERLINE_TRUST_PROXY')
        .argParser(toProxies),
    )
    .addOption(
      new Option('--proxy-header <name>', 'in which such a proxy says who called it')
        .choices(['x-forwarded-for', 'forwarded'])
        .default('x-forwarded-for')
        .env('LADDERLINE_PROXY_HEADER'),
    )
    .addOption(
      new Option('--data <folder>', 'folder of the log and the own certificate; made if missing')
        .default(resolve('data'), './data')
        .env('LADDERLINE_DATA')
        .argParser(toPath),
    )
    .addOption(storeOption('keep the records in a PostgreSQL database instead; see below').argParser(toStore))
    .addOption(passwordFileOption())
    .addOption(
      new Option('--peer <url>', 'under which other processes on the same database reach this one')
        .default(undefined, 'its port on this machine')
        .env('LADDERLINE_PEER')
        .argParser((url) => toUrl(url).replace(/\/+$/, '')),
    )
    .addOption(
      new Option('--sso-from <url>', 'people sign in there (OpenID Connect); see below')
        .default(undefined, 'nowhere')
        .env('LADDERLINE_SSO_FROM')
        .argParser(toUrl),
    )
    .addOption(
      new Option('--sso-client <id>', 'what this server is called there').env('LADDERLINE_SSO_CLIENT'),
    )
    .addOption(
      new Option('--sso-secret-file <file>', 'that holds its secret there')
        .default(undefined, 'none: PKCE alone')
        .env('LADDERLINE_SSO_SECRET_FILE')
        .argParser(toPath),
    )
    .addOption(
      new Option('--sso-scopes <list>', 'what is asked of the provider, with spaces')
        .default('openid profile')
        .env('LADDERLINE_SSO_SCOPES'),
    )
    .addOption(
      new Option('--sso-claim <name>', 'claim of the ID token that holds the roles of a person')
        .default('roles')
        .env('LADDERLINE_SSO_CLAIM'),
    )
    .addOption(
      new Option('--sso-roles <list>', 'which value of it stands for which role, such as leads=supervisor')
        .default(new Map(AccountRole.options.map((role) => [role, role])), 'the names of the roles')
        .env('LADDERLINE_SSO_ROLES')
        .argParser(toRoles),
    )
    .addOption(
      new Option('--sso-name <text>', 'what people call it')
        .default(undefined, 'the host')
        .env('LADDERLINE_SSO_NAME'),
    )
    .addOption(
      new Option('--otlp <url>', 'collector that takes metrics and traces (OpenTelemetry, OTLP over HTTP)')
        .default(undefined, 'none')
        .env('LADDERLINE_OTLP')
        .argParser(toUrl),
    )
    .addOption(
      new Option('--tls <kind>', 'how phones connect; see below')
        .choices(['own', 'off', 'files'])
        .default('own')
        .env('LADDERLINE_TLS'),
    )
    .addOption(
      new Option('--cert <file>', 'certificate chain (PEM), with --tls files')
        .env('LADDERLINE_CERT')
        .argParser(toPath),
    )
    .addOption(new Option('--key <file>', 'its private key (PEM)').env('LADDERLINE_KEY').argParser(toPath))
    .addOption(
      new Option('--speech <switch>', 'speech recognition on this machine')
        .choices(['on', 'off'])
        .default('on')
        .env('LADDERLINE_SPEECH'),
    )
    .addOption(
      new Option('--speech-at <list>', 'speech services that hear instead of this machine, with commas')
        .default(undefined, 'this machine hears')
        .env('LADDERLINE_SPEECH_AT')
        .argParser((text) => text.split(',').map((url) => toUrl(url.trim()))),
    )
    .addOption(
      new Option('--speech-password-file <file>', 'that holds the password of these services')
        .default(undefined, 'none')
        .env('LADDERLINE_SPEECH_PASSWORD_FILE')
        .argParser(toPath),
    )
    .addOption(
      new Option('--model <folder>', 'folder of the speech model')
        .default(DEFAULT_MODEL_FOLDER, 'the one that comes with the server')
        .env('LADDERLINE_MODEL')
        .argParser(toPath),
    )
    .addOption(
      new Option('--voice <switch>', 'make speech for phones that have no voice of their own; see below')
        .choices(['on', 'off'])
        .default('off')
        .env('LADDERLINE_VOICE'),
    )
    .addOption(
      new Option('--heads-file <file>', 'also write signed heads there; see below')
        .env('LADDERLINE_HEADS_FILE')
        .argParser(toPath),
    )
    .addOption(
      new Option('--heads-to <url>', 'also post signed heads there, as JSON')
        .env('LADDERLINE_HEADS_TO')
        .argParser(toUrl),
    )
    .addOption(
      new Option('--heads-mail <address>', 'print a link that mails the newest head to this address')
        .env('LADDERLINE_HEADS_MAIL')
        .argParser(toMail),
    )
    .addOption(
      new Option(
        '--stamp-from <url>',
        'have the time of signed heads vouched for there (RFC 3161); see below',
      )
        .env('LADDERLINE_STAMP_FROM')
        .argParser(toUrl),
    )
    .addOption(
      new Option('--stamp-authority <file>', 'whose time stamps are believed: its certificate (PEM)')
        .env('LADDERLINE_STAMP_AUTHORITY')
        .argParser(toPath),
    )
    .addOption(
      new Option('--stamp-every <minutes>', 'how often what has changed is stamped')
        .default(60)
        .env('LADDERLINE_STAMP_EVERY')
        .argParser(toMinutes),
    )
    .addOption(
      new Option(
        '--disk-least <MB>',
        'with less room on the disk of the data folder, /api/health answers 503; 0: never',
      )
        .default(500)
        .env('LADDERLINE_DISK_LEAST')
        .argParser(toMegabytes),
    )
    .addOption(
      new Option(
        '--rules-threads <number>',
        'threads in which the next move is worked out; 0: with the sockets',
      )
        .default(0)
        .env('LADDERLINE_RULES_THREADS')
        .argParser(toThreads),
    )
    .addOption(
      new Option('--keep-pictures <days>', 'remove pictures of photos that are older; their entries stay')
        .default(undefined, 'for ever')
        .env('LADDERLINE_KEEP_PICTURES')
        .argParser(toDays),
    )
    .addOption(
      new Option('--keep-names <days>', 'forget all names of a record so many days after its last entry')
        .default(undefined, 'for ever')
        .env('LADDERLINE_KEEP_NAMES')
        .argParser(toDays),
    )
    .addOption(
      new Option('--keep-reads <days>', 'how long it is kept who read what')
        .default(365)
        .env('LADDERLINE_KEEP_READS')
        .argParser(toReadDays),
    )
    .addOption(
      new Option('--log-level <level>', 'what to log to standard error, as JSON lines')
        .choices(LOG_LEVELS)
        .default('warn')
        .env('LADDERLINE_LOG_LEVEL'),
    )
    .addHelpText('after', TLS_HELP + NAME_HELP + STORE_HELP + SSO_HELP + HEADS_HELP + VOICE_HELP);
  program.parse(argv, { from: 'user' });
  const options = program.opts<Options>();
  const given = options.cert !== undefined || options.key !== undefined;
  if (options.tls === 'files' && !(options.cert && options.key)) {
    program.error('error: --tls files needs both --cert and --key.');
  }
  if ((options.stampFrom === undefined) !== (options.stampAuthority === undefined))
    program.error('error: --stamp-from and --stamp-authority go together.');
  if ((options.storePasswordFile ?? options.peer) !== undefined && options.store === undefined)
    program.error('error: --store-password-file and --peer go with --store.');
  if ((options.ssoFrom === undefined) !== (options.ssoClient === undefined))
    program.error('error: --sso-from and --sso-client go together.');
  if (options.ssoSecretFile !== undefined && options.ssoFrom === undefined)
    program.error('error: --sso-secret-file goes with --sso-from.');
  if (options.tls !== 'files' && given) program.error('error: --cert and --key go with --tls files.');
  return options;
}

const TLS_HELP = `
Phones give a page the microphone only over https; without it, people type. They keep the pages for times
without a network only over https that they trust.
  --tls own    (default) https with a certificate of the server's own authority, kept in the data
               folder. Phones warn until they are told to trust it: the page /trust says how. Plain
               http works too, on the same port, for all but the microphone.
  --tls files  https with your own certificate that the phones trust: best for a firm.
  --tls off    plain http: for typing only, or behind a proxy that adds https.
`;

const NAME_HELP = `
The server answers to its addresses, to localhost, to the name of this machine, and to the names in its certificate.
Any other name is refused, because a website could make its own name lead here. If people reach the server under
another name, through a proxy or a name server of the firm, give that name with --name.
With --local-name ladderline it says to its networks by multicast DNS (RFC 6762, UDP port 5353) that it is ladderline.local.
Nothing is sent without it. Not every network passes that on, and not every phone asks: the addresses always work.
Behind a proxy all callers have the proxy's address, and share its limits, unless --trust-proxy names it: then the
address that it gives is taken. Never name an address from which people call directly: they could give any.
`;

const STORE_HELP = `
The records lie in a file in the data folder, which needs no looking after: first choice for one machine. A firm that has
a PostgreSQL (13 or newer) can have them there:
  --store postgres://USER@HOST/DATABASE   or ...@/DATABASE?host=/FOLDER for a unix socket; ?sslmode=verify-full for TLS
The password is in PGPASSWORD, or in the file of --store-password-file; never in the address. Keys and accounts stay in the
data folder. The database is backed up with its own tools, not with npm run backup. Several processes may share one database:
give them the same key files, and --peer where they are on several machines. docs/scale.md has more.
`;

const SSO_HELP = `
Anybody may open sites and jobs here, or who has a passphrase or an account (npm run passphrase, npm run account). A firm
whose people have accounts at a provider of OpenID Connect can have them sign in with these:
  --sso-from URL --sso-client ID   as the provider gives them; there, register https://THIS-SERVER${SIGNED_IN_PATH} as redirect URI
  --sso-roles fitters=technician,leads=supervisor,it=administrator
The highest role that the claim gives counts; with none, nobody is signed in. docs/firms.md has more.
`;

const HEADS_HELP = `
The server signs the head of every record as it grows, with the key signing.key in its data folder. Who owns
that key can still write a record again; a signed head that lies elsewhere shows it. Keep them on another
machine, or with your customer:
  --heads-file FILE     a line for each minute of change, best on a disk that can only be added to
  --heads-to URL        the same, posted as JSON
  --heads-mail ADDRESS  a mailto link at each start
The times in them are those of the server's own clock. An authority that stamps times can vouch for the head of
all of them; only a hash goes there:
  --stamp-from URL        the address of its service (RFC 3161), as it publishes it
  --stamp-authority FILE  its certificate, from a source that you trust; other time stamps are refused
  --stamp-every MINUTES   no more often (60), but for a signature of a person, which is stamped at once
npm run verify -- --help says how to check a record against them. docs/security.md says what each proves.
`;

const VOICE_HELP = `
Phones speak with a voice of their own; where one has none, its screen says so. With --voice on the
server makes the sound for it, with a package that is not part of Ladderline: ${SYNTHESISER.package}, which
${SYNTHESISER.licence}. Whoever passes on the two together has to keep to that
licence. To install it, after each npm ci:
  ${SYNTHESISER.install}
`;
