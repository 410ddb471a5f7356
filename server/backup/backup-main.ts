import { resolve } from 'node:path';
import { InvalidArgumentError, Option } from 'commander';
import { backUp } from './backup.ts';
import { folderCommand, runCommand } from './command.ts';

/** Throws an error of commander, which it prints. */
function numberOfBackups(text: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 1) throw new InvalidArgumentError('It must be 1 or more.');
  return number;
}

const program = folderCommand('backup')
  .description('Backs up all records and keys into a new folder inside <folder>, also while the server runs.')
  .addOption(
    new Option(
      '--keep <number>',
      'take away older backups in <folder>, but for so many of the newest',
    ).argParser(numberOfBackups),
  )
  .parse();

runCommand('backup', async () => {
  const { data, keep } = program.opts<{ data: string; keep?: number }>();
  const into = resolve(program.args[0] ?? '');
  const made = await backUp(data, into, Date.now(), keep);
  const { folder, manifest, keys, damaged, lost, bytes, mended, removed } = made;
  if (damaged.length > 0 || lost.length > 0) process.exitCode = 1;
  return [
    ...damaged.map(
      (log) => `DAMAGED:   the log ${log}. It is in the backup as it is; keep the older backups too.`,
    ),
    ...lost.map((photo) => `LOST:      the picture of the log ${photo}. Keep the older backups too.`),
    `Backed up: ${manifest.logs} logs with ${manifest.entries} entries, every hash checked.`,
    `Folder:    ${folder}, with the pieces beside it: keep both together.`,
    `Written:   ${(bytes / 1e6).toFixed(1)} MB; what the backups before have too lies there once.`,
    ...(mended > 0
      ? [`MENDED:    ${mended} pieces of older backups were damaged, and are whole again. Look at that disk.`]
      : []),
    ...removed.map((old) => `Removed:   ${old}`),
    `Keys:      ${keys.join(', ') || 'none'}. Who has them can sign as this server: keep the folder where only you can read it.`,
  ];
});
