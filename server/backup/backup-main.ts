import { resolve } from 'node:path';
import { backUp } from './backup.ts';
import { folderCommand, runCommand } from './command.ts';

const program = folderCommand('backup')
  .description('Backs up all records and keys into a new folder inside <folder>, also while the server runs.')
  .parse();

runCommand('backup', async () => {
  const { data } = program.opts<{ data: string }>();
  const into = resolve(program.args[0] ?? '');
  const { folder, manifest, keys, damaged, lost } = await backUp(data, into, Date.now());
  if (damaged.length > 0 || lost.length > 0) process.exitCode = 1;
  return [
    ...damaged.map(
      (log) => `DAMAGED:   the log ${log}. It is in the backup as it is; keep the older backups too.`,
    ),
    ...lost.map((photo) => `LOST:      the picture of the log ${photo}. Keep the older backups too.`),
    `Backed up: ${manifest.logs} logs with ${manifest.entries} entries, every hash checked.`,
    `Folder:    ${folder}`,
    `Keys:      ${keys.join(', ') || 'none'}. Who has them can sign as this server: keep the folder where only you can read it.`,
  ];
});
