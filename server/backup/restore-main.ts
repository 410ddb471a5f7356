import { resolve } from 'node:path';
import { folderCommand, runCommand } from './command.ts';
import { restore } from './restore.ts';

const program = folderCommand('restore')
  .description(
    'Puts the backup in <folder>, or the newest of several there, into the data folder of a stopped server.',
  )
  .option('--overwrite', 'put what stands in the data folder aside; without this it is refused', false)
  .parse();

runCommand('restore', async () => {
  const { data, overwrite } = program.opts<{ data: string; overwrite: boolean }>();
  const { from, manifest, keys, lost, before } = await restore(
    resolve(program.args[0] ?? ''),
    data,
    overwrite,
    Date.now(),
  );
  return [
    ...lost.map((photo) => `LOST:      the picture of the log ${photo}. An older backup may have it.`),
    `Restored:  ${manifest.logs} logs with ${manifest.entries} entries, every hash checked, from ${from}`,
    `As of:     ${new Date(manifest.at).toISOString()}. What was recorded after that is not in it.`,
    `Keys:      ${keys.join(', ') || 'none'}`,
    ...(before === undefined ? [] : [`Before:    what stood there is in ${before}`]),
    'Phones that know later entries say so when they connect, and stop: open a new job for what they were doing.',
  ];
});
