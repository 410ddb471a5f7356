import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { sha256Of } from '../process/on-disk.ts';
import { type Backup, backupsIn, databaseIn, headsOf } from './folder.ts';
import { damagedPieces, Pieces } from './pieces.ts';

/** Logs that are named one by one; of more, only how many. */
const NAMED_MOST = 20;

/** For people: that pieces of a backup are damaged, which other one is whole, and what that one lacks. */
export async function whatIsLost(backup: Backup): Promise<string> {
  const { folder, manifest } = backup;
  const backups = dirname(folder);
  const pieces = new Pieces(backups);
  const names = manifest.version === 2 ? manifest.pieces : [];
  const damage = `${damagedPieces(names, pieces).length} of ${names.length} pieces of ${folder} are missing or damaged, so it cannot be restored. They lie in ${backups}: keep that folder as one.`;
  const others = backupsIn(backups).filter((other) => other.folder !== folder);
  // The newest that is older, or else the oldest that is newer.
  const older = others.filter((other) => other.manifest.at <= manifest.at);
  const newer = others.filter((other) => other.manifest.at > manifest.at).reverse();
  for (const other of [...older, ...newer])
    if (await isWhole(other, pieces))
      return `${damage} Restore ${other.folder} instead: it is whole, of ${new Date(other.manifest.at).toISOString()}. ${lacks(other, backup)}`;
  return `${damage} No other backup there is whole: take one that was kept elsewhere.`;
}

const isWhole = async ({ folder, manifest }: Backup, pieces: Pieces): Promise<boolean> =>
  manifest.version === 1
    ? existsSync(databaseIn(folder)) && (await sha256Of(databaseIn(folder))) === manifest.sha256
    : damagedPieces(manifest.pieces, pieces).length === 0;

/** What `other` does not have of `wanted`. */
function lacks(other: Backup, wanted: Backup): string {
  const [had, has] = [headsOf(wanted.folder), headsOf(other.folder)];
  if (!had || !has) return 'What it lacks cannot be said: the list of logs of one of the two is missing.';
  const missing = [...had].filter(([job, count]) => count > (has.get(job) ?? 0));
  if (missing.length === 0) return 'It lacks no entry.';
  const entries = missing.reduce((sum, [job, count]) => sum + count - (has.get(job) ?? 0), 0);
  const named = missing.slice(0, NAMED_MOST).map(([job]) => `${job} from entry ${has.get(job) ?? 0} on`);
  const more = missing.length > NAMED_MOST ? [`and ${missing.length - NAMED_MOST} more`] : [];
  return `It lacks ${entries} entries of ${missing.length} logs: ${[...named, ...more].join(', ')}.`;
}
