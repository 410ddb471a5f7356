import type { Storage } from '../browser/storage.ts';

const DRAWER = 'hands-free';

/** Whether the person wants to talk without a button on this phone; undefined: nobody has chosen yet. */
export function handsFreeChoice(storage: Storage): boolean | undefined {
  const kept = storage.read(DRAWER);
  return typeof kept === 'boolean' ? kept : undefined;
}

export const keepHandsFree = (storage: Storage, on: boolean): boolean => storage.write(DRAWER, on);
