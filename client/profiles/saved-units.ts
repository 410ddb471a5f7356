import { METRES, Units } from '../../src/model/units.ts';
import type { Storage } from '../browser/storage.ts';

const KEY = 'units';

/** The units that this device used last, for the next job or site. */
export const ownUnits = (storage: Storage): Units => Units.safeParse(storage.read(KEY)).data ?? METRES;

export const rememberUnits = (storage: Storage, units: Units): void => void storage.write(KEY, units);
