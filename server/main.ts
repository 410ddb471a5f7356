import { pino } from 'pino';
import { type Backups, serveBackups } from './backup/socket.ts';
import { greeting } from './greeting.ts';
import { certificateNames } from './network/addresses.ts';
import { givenCertificate, type KeyPair, ownCertificate } from './network/certificate.ts';
import { SigningKey } from './notary/ed25519.ts';
import type { Publish } from './notary/notary.ts';
import { toAddress, toFile } from './notary/publish.ts';
import { type Options, readOptions } from './options.ts';
import { StartFailure } from './process/start-failure.ts';
import type { SpeechEngine } from './speech/service.ts';
import { openTranscriber } from './speech/start.ts';
import { type RunningServer, startServer } from './start.ts';
import { openDataFolder } from './store/data-folder.ts';
import { StoreFailure } from './store/store.ts';
import { openVoice } from './voice/start.ts';
import { isInstalled, SYNTHESISER } from './voice/synthesiser.ts';
import type { VoiceMaker } from './voice/voice.ts';

async function tlsOf(options: Options): Promise<KeyPair | undefined> {
  const { tls, cert, key } = options;
  if (tls === 'own') return ownCertificate(options.data, certificateNames(options.host), Date.now());
  return cert && key ? givenCertificate(cert, key) : undefined;
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
  const log = pino({ level: options.logLevel }, pino.destination({ dest: 2, sync: true }));
  const voice = voiceOf(options);
  const store = openDataFolder(options.data, undefined, (text) => log.warn(text));
  const tls = await tlsOf(options);
  const signingKey = SigningKey.ofFolder(options.data);
  const { port, host } = options;
  const transcriber = options.speech === 'on' ? openTranscriber(options.model) : undefined;
  const server = await startServer({
    store,
    port,
    host,
    log,
    modelFolder: options.model,
    signingKey,
    publish: publishersOf(options),
    names: options.name,
    ...(tls && { tls, isTrusted: options.tls === 'files' }),
    ...(transcriber && { transcriber }),
    ...(voice && { voice }),
  });
  const backups = await serveBackups(options.data, store, log);
  endOnSignal(server, backups);
  console.log(greeting(options, server, signingKey.fingerprint, await speechLine(transcriber)));
}

/** The first signal ends the server in order; a second one ends it at once. */
function endOnSignal(server: RunningServer, backups: Backups): void {
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      process.once(signal, () => process.exit(1));
      backups.close();
      server.close().then(
        () => process.exit(0),
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
