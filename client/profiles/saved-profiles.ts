import * as z from 'zod/mini';
import { MeterProfile, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { Storage } from '../browser/storage.ts';

const KEY = 'meters';
const MOST = 20;

/** The user's own meters, newest first. One that no longer fits is left out, the others stay. */
export function ownMeters(storage: Storage): MeterProfile[] {
  const kept = z.array(z.unknown()).safeParse(storage.read(KEY));
  return (kept.data ?? []).flatMap((one) => MeterProfile.safeParse(one).data ?? []);
}

/** Remembers a meter that was used, in place of one of the same name; a neutral one as it ships needs no keeping. */
export function rememberMeter(storage: Storage, meter: MeterProfile): void {
  if (NEUTRAL_METERS.some((neutral) => sameMeter(neutral, meter))) return;
  const others = ownMeters(storage).filter((own) => own.name !== meter.name);
  storage.write(KEY, [meter, ...others].slice(0, MOST));
}

export const forgetMeter = (storage: Storage, name: string): void =>
  void storage.write(
    KEY,
    ownMeters(storage).filter((own) => own.name !== name),
  );

const sameMeter = (a: MeterProfile, b: MeterProfile): boolean =>
  JSON.stringify(MeterProfile.parse(a)) === JSON.stringify(MeterProfile.parse(b));
