import { pino } from 'pino';
import { certificateNames } from './addresses.ts';
import { givenCertificate, type KeyPair, ownCertificate } from './certificate.ts';
import { greeting } from './greeting.ts';
import { type Options, readOptions } from './options.ts';
import { type RunningServer, startServer } from './start.ts';
import { StartFailure } from './start-failure.ts';
import { openDataFolder } from './store/open.ts';
import { StoreFailure } from './store/store.ts';

async function tlsOf(options: Options): Promise<KeyPair | undefined> {
  const { tls, cert, key } = options;
  if (tls === 'own') return ownCertificate(options.data, certificateNames(options.host), Date.now());
  return cert && key ? givenCertificate(cert, key) : undefined;
}

async function main(): Promise<void> {
  const options = readOptions(process.argv.slice(2));
  const log = pino({ level: options.logLevel }, pino.destination({ dest: 2, sync: true }));
  const store = openDataFolder(options.data);
  const tls = await tlsOf(options);
  const { port, host } = options;
  const server = await startServer({ store, port, host, log, ...(tls && { tls }) });
  console.log(greeting(options, server.port, 'off'));
  endOnSignal(server);
}

/** The first signal ends tidily; a second one ends at once. */
function endOnSignal(server: RunningServer): void {
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      process.once(signal, () => process.exit(1));
      server.close().then(
        () => process.exit(0),
        (error: unknown) => fail(error),
      );
    });
  }
}

/** One clear line for what people can mend; the whole story for what they cannot. */
function fail(error: unknown): never {
  const known = error instanceof StartFailure || error instanceof StoreFailure;
  console.error(known ? `ladderline: ${error.message}` : error);
  process.exit(1);
}

main().catch(fail);
