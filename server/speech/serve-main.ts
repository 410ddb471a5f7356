import { resolve } from 'node:path';
import { Command, Option } from 'commander';
import { isLoopback } from '../network/addresses.ts';
import { DEFAULT_MODEL_FOLDER } from '../process/program.ts';
import { secretIn } from '../process/secret-file.ts';
import { StartFailure } from '../process/start-failure.ts';
import { serveSpeech } from './serve.ts';
import { openTranscriber } from './start.ts';

const program = new Command('speech-service')
  .description('Hears for the servers that are given its address with --speech-at. It keeps nothing.')
  .addOption(
    new Option('--port <number>', 'port to listen on')
      .default(8480)
      .env('LADDERLINE_SPEECH_PORT')
      .argParser(Number),
  )
  .addOption(
    new Option('--host <address>', 'address to listen on; any but this machine needs a password')
      .default('127.0.0.1')
      .env('LADDERLINE_SPEECH_HOST'),
  )
  .addOption(
    new Option('--password-file <file>', 'that servers must know')
      .env('LADDERLINE_SPEECH_PASSWORD_FILE')
      .argParser((file) => resolve(file)),
  )
  .addOption(
    new Option('--model <folder>', 'folder of the speech model')
      .default(DEFAULT_MODEL_FOLDER, 'the one that comes with the server')
      .env('LADDERLINE_MODEL'),
  )
  .parse();

async function main(): Promise<void> {
  const { host, port, model, passwordFile } = program.opts<{
    host: string;
    port: number;
    model: string;
    passwordFile?: string;
  }>();
  if (passwordFile === undefined && !isLoopback(host))
    throw new StartFailure(
      'others can reach that address: give --password-file, with a password of their own for the servers.',
    );
  const password =
    passwordFile === undefined ? undefined : secretIn(passwordFile, 'the password of the speech service');
  const engine = openTranscriber(model);
  const server = await serveSpeech(engine, { host, port, password });
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => void server.close().then(() => process.exit(0)));
  await engine.ready;
  console.log(`Speech service at ${server.url}, ready.`);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? `speech-service: ${error.message}` : error);
  process.exit(1);
});
