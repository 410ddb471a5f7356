import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { readKeyFile, writeKeyFile } from './key-file.ts';
import { StoreFailure } from './store.ts';

export const PASSPHRASE_FILE = 'passphrase.scrypt';

/** OWASP Password Storage Cheat Sheet, scrypt: N = 2^17, r = 8, p = 1, which take 128 MiB; from memory. */
const COST = { N: 2 ** 17, r: 8, p: 1, maxmem: 160 * 1024 * 1024 };
const SALT_BYTES = 16;
const HASH_BYTES = 32;

/** NIST SP 800-63B, 3.1.1.2: at least 15 characters where it is the only factor; from memory. */
export const LEAST_LETTERS = 15;

/** `scrypt$17$8$1$SALT$HASH`, base64url: the figures stand beside, so that later ones do not lock anybody out. */
const FORM = /^scrypt\$(\d+)\$(\d+)\$(\d+)\$([\w-]+)\$([\w-]+)$/;

const derive = promisify<string, Buffer, number, typeof COST, Buffer>(scrypt);

/** The same letters, however a keyboard made them (Unicode NFKC, as NIST SP 800-63B asks). */
const plain = (passphrase: string): string => passphrase.normalize('NFKC').trim();

export const isLongEnough = (passphrase: string): boolean => [...plain(passphrase)].length >= LEAST_LETTERS;

/** From now on who opens sites and jobs on this data folder must know it. */
export async function setPassphrase(folder: string, passphrase: string): Promise<void> {
  const salt = randomBytes(SALT_BYTES);
  const hash = await derive(plain(passphrase), salt, HASH_BYTES, COST);
  const figures = [Math.log2(COST.N), COST.r, COST.p].join('$');
  const text = ['scrypt', figures, salt.toString('base64url'), hash.toString('base64url')].join('$');
  writeKeyFile(join(folder, PASSPHRASE_FILE), `${text}\n`);
}

/** From now on anybody may open sites and jobs. */
export const removePassphrase = (folder: string): void =>
  rmSync(join(folder, PASSPHRASE_FILE), { force: true });

export interface PassphraseCheck {
  /** Whether there is one now. */
  isSet(): boolean;
  /** Rejects with `StoreFailure` where the file is damaged: then nobody is let in. */
  isRight(passphrase: string): Promise<boolean>;
}

/** Looks at the file each time: what `npm run passphrase` changes holds at once. One check at a time, for the memory. */
export function passphraseOf(folder: string): PassphraseCheck {
  const file = join(folder, PASSPHRASE_FILE);
  let before: Promise<unknown> = Promise.resolve();
  const check = async (passphrase: string) => {
    const [, n, r, p, salt = '', hash = ''] = FORM.exec(readKeyFile(file) ?? '') ?? [];
    if (n === undefined)
      throw new StoreFailure(`${file} holds no passphrase: set it again with npm run passphrase.`);
    const right = Buffer.from(hash, 'base64url');
    const figures = { N: 2 ** Number(n), r: Number(r), p: Number(p), maxmem: COST.maxmem };
    const given = await derive(plain(passphrase), Buffer.from(salt, 'base64url'), right.length, figures);
    return timingSafeEqual(right, given);
  };
  return {
    isSet: () => existsSync(file),
    isRight(passphrase) {
      const answer = before.then(() => check(passphrase));
      before = answer.catch(() => undefined);
      return answer;
    },
  };
}
