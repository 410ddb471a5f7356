import { Sso } from './accounts/sso.ts';
import { type Backups, serveBackups } from './backup/socket.ts';
import { greeting } from './greeting.ts';
import { Callers } from './guard/callers.ts';
import { LocalName, linksOf } from './local-name/local-name.ts';
import { certificateNames } from './network/addresses.ts';
import type { KeyPair } from './network/authority.ts';
import { givenCertificate, keepRenewed, ownCertificate } from './network/certificate.ts';
import { SigningKey } from './notary/ed25519.ts';
import type { Publish } from './notary/notary.ts';
import { toAddress, toFile } from './notary/publish.ts';
import { type Options, readOptions } from './options.ts';
import { nameOf } from './postgres/address.ts';
import { openPostgres } from './postgres/open.ts';
import { secretIn } from './process/secret-file.ts';
import { StartFailure } from './process/start-failure.ts';
import { within } from './process/within.ts';
import { speechAt } from './speech/elsewhere.ts';
import type { SpeechEngine } from './speech/service.ts';
import { openTranscriber } from './speech/start.ts';
import { askAt, certificatesIn } from './stamps/ask.ts';
import { stampsBy } from './stamps/token.ts';
import { type RunningServer, type StampsFrom, startServer } from './start.ts';
import { accountsOf } from './store/accounts.ts';
import { makeDataFolder } from './store/data-folder.ts';
import { freeSpaceOf } from './store/free-space.ts';
import { passphraseOf } from './store/passphrase.ts';
import { noteRecordsElsewhere, refuseElsewhere } from './store/records-elsewhere.ts';
import type { Warn } from './store/sqlite.ts';
import { StoreFailure } from './store/store.ts';
import { summaryKeyOf } from './store/summary-key.ts';
import { openInThread } from './store/threaded.ts';
import { makeLogger } from './telemetry/logger.ts';
import { metricsTokenOf } from './telemetry/token.ts';
import { openVoice } from './voice/start.ts';
import { isInstalled, SYNTHESISER } from './voice/synthesiser.ts';
import type { VoiceMaker } from './voice/voice.ts';

/** Where the certificate comes from, now and later. `warn` hears when phones must be told again to trust it. */
function certificateOf(
  { tls, cert, key, data, host, name }: Options,
  warn: (text: string) => void,
): (() => Promise<KeyPair>) | undefined {
  if (tls === 'own')
    return async () => {
      const { pair, isNewAuthority } = await ownCertificate(data, certificateNames(host, name), Date.now());
      if (isNewAuthority) warn(NEW_AUTHORITY);
      return pair;
    };
  return cert && key ? async () => givenCertificate(cert, key) : undefined;
}

const NEW_AUTHORITY =
  'the server made a new certificate authority: phones that trusted an older one must be told again (/trust).';

function speechOf({
  speech,
  speechAt: urls,
  speechPasswordFile: file,
  model,
}: Options): SpeechEngine | undefined {
  if (speech === 'off') return undefined;
  if (urls === undefined) return openTranscriber(model);
  return speechAt(urls, {
    password: file === undefined ? undefined : secretIn(file, 'the password of the speech service'),
  });
}

function voiceOf(options: Options): VoiceMaker | undefined {
  if (options.voice === 'off') return undefined;
  if (isInstalled()) return openVoice();
  throw new StartFailure(
    `--voice on needs the package ${SYNTHESISER.package}, which is not installed. To install it: ${SYNTHESISER.install} (it ${SYNTHESISER.licence}).`,
  );
}

function publishersOf({ headsFile, headsTo }: Options): Publish[] {
  return [...(headsFile ? [toFile(headsFile)] : []), ...(headsTo ? [toAddress(headsTo)] : [])];
}

function stampsFrom({ stampFrom, stampAuthority, stampEvery }: Options): StampsFrom | undefined {
  if (!stampFrom || !stampAuthority) return undefined;
  try {
    return {
      ask: askAt(stampFrom, stampsBy(certificatesIn(stampAuthority))),
      from: new URL(stampFrom).host,
      everyMs: stampEvery * 60_000,
    };
  } catch (error) {
    throw new StartFailure(
      `the certificate of --stamp-authority cannot be read: ${(error as Error).message}. Give the one that the time-stamping authority publishes, as a PEM file.`,
    );
  }
}

function ssoOf(options: Options): Sso | undefined {
  const { ssoFrom, ssoClient: client, ssoSecretFile: file, ssoName, ssoScopes: scopes } = options;
  if (ssoFrom === undefined || client === undefined) return undefined;
  const issuer = new URL(ssoFrom);
  return new Sso({
    ...{ issuer, client, scopes, claim: options.ssoClaim, roles: options.ssoRoles },
    name: ssoName ?? issuer.host,
    ...(file !== undefined && { secret: secretIn(file, 'the secret of the provider') }),
  });
}

async function openStore({ data, store: url, storePasswordFile: passwordFile }: Options, warn: Warn) {
  if (url === undefined) {
    refuseElsewhere(
      data,
      (database) =>
        `start with --store, or bring them here first (npm run copy -- ${database} ${data}). To begin anew, delete that file.`,
    );
    return openInThread(data, warn);
  }
  makeDataFolder(data);
  const store = await openPostgres({ url, passwordFile }, summaryKeyOf(data).key, warn);
  noteRecordsElsewhere(data, nameOf({ url }));
  return store;
}

/** Waits until the speech engine is loaded or has failed, and says which. */
async function speechLine(engine: SpeechEngine | undefined): Promise<string> {
  if (!engine) return 'off: people type';
  try {
    await engine.ready;
    return `${engine.name}, ready`;
  } catch (error) {
    return `not available, people type: ${(error as Error).message}`;
  }
}

async function main(): Promise<void> {
  const options = readOptions(process.argv.slice(2));
  // It may be called by it, and its certificate is for it, whether or not the network tells phones.
  if (options.localName) options.name.push(options.localName);
  const log = makeLogger(options.logLevel);
  const voice = voiceOf(options);
  const stamps = stampsFrom(options);
  const sso = ssoOf(options);
  const store = await openStore(options, (text) => log.warn(text));
  const certificate = certificateOf(options, (text) => log.warn(text));
  const tls = await certificate?.();
  const signingKey = SigningKey.ofFolder(options.data);
  const { port, host } = options;
  const transcriber = speechOf(options);
  let localName: LocalName | undefined;
  const server = await startServer({
    store,
    ...('leases' in store && {
      leases: store.leases,
      figures: store.figures,
      peerUrl: options.peer,
    }),
    port,
    host,
    log,
    modelFolder: options.model,
    signingKey,
    publish: publishersOf(options),
    ...(stamps && { stamps }),
    names: options.name,
    localName: () => (localName?.state === 'held' ? localName.name : undefined),
    passphrase: passphraseOf(options.data),
    accounts: accountsOf(options.data),
    ...(sso && { sso }),
    rulesThreads: options.rulesThreads,
    disk: freeSpaceOf(options.data, options.diskLeast * 1e6),
    metricsToken: metricsTokenOf(options.data),
    ...(options.otlp !== undefined && { otlp: options.otlp }),
    ...(options.keepPictures !== undefined && { keepPicturesDays: options.keepPictures }),
    keepReadsDays: options.keepReads,
    ...(options.keepNames !== undefined && { keepNamesDays: options.keepNames }),
    callers: new Callers(options.trustProxy, options.proxyHeader),
    ...(tls && { tls }),
    ...(transcriber && { transcriber }),
    ...(voice && { voice }),
  });
  // A database is backed up with its own tools.
  const backups = 'copyTo' in store ? await serveBackups(options.data, store, log) : undefined;
  if (certificate && tls)
    keepRenewed(
      tls,
      certificate,
      (pair) => server.useCertificate(pair),
      (err) => log.error({ err }, 'the certificate could not be renewed'),
    );
  if (options.localName) {
    localName = new LocalName(options.localName, () => linksOf(host), log);
    await within(LOCAL_NAME_WITHIN_MS, localName.settled());
  }
  endOnSignal(server, backups, localName);
  console.log(
    greeting(
      options,
      server,
      signingKey.fingerprint,
      await speechLine(transcriber),
      tls?.authority,
      localName?.state,
    ),
  );
}

/** Asking whether somebody else has the name takes less than a second where nobody has. */
const LOCAL_NAME_WITHIN_MS = 3000;
/** Less than the 90 s that systemd waits by default before it kills a program. */
const END_WITHIN_MS = 30_000;
const NOT_ENDED =
  'the server could not end in order within 30 seconds, and was ended. What was acknowledged is in the logs; phones send the rest again.';

/** The first signal ends the server in order, in bounded time; a second one ends it at once. */
function endOnSignal(
  server: RunningServer,
  backups: Backups | undefined,
  localName: LocalName | undefined,
): void {
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      process.once(signal, () => process.exit(1));
      backups?.close();
      within(END_WITHIN_MS, Promise.all([localName?.close(), server.close()])).then(
        (isDone) => (isDone ? process.exit(0) : fail(new StartFailure(NOT_ENDED))),
        (error: unknown) => fail(error),
      );
    });
  }
}

/** One clear line for a failure that people can repair; the whole error for any other. */
function fail(error: unknown): never {
  const known = error instanceof StartFailure || error instanceof StoreFailure;
  console.error(known ? `ladderline: ${error.message}` : error);
  process.exit(1);
}

main().catch(fail);
