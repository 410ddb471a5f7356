import { statfs } from 'node:fs/promises';

/** Room on the disk of the data folder: how much there is, and how little there may be, bytes. */
export interface FreeSpace {
  now(): Promise<number>;
  readonly least: number;
}

/** What a user that is not root may still write. */
export const freeSpaceOf = (folder: string, least: number): FreeSpace => ({
  least,
  async now() {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize;
  },
});

/** Where there is no disk, as in tests. */
export const ENDLESS: FreeSpace = { least: 0, now: async () => Number.POSITIVE_INFINITY };
