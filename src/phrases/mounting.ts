import { type Along, isOnItsSide, type Mounting, movesAlong } from '../model/mounting.ts';
import type { Axis } from '../model/turns.ts';

/** Asked once, of the person at the emitter. */
export const HOW_MOUNTED = 'How does the unit hang?';
export const HOW_MOUNTED_WHY =
  'Look at the front of the unit. Where does its top point? On a unit on its side, each adjuster moves the beam the other way.';
export const CANNOT_SEE_YET = 'I cannot see it yet';

/** As seen by the person facing the unit. */
export const MOUNTING_NAMES: Readonly<Record<Mounting, string>> = {
  upright: 'Upright',
  'top-left': 'On its side, top to the left',
  'top-right': 'On its side, top to the right',
  'upside-down': 'Upside down',
};

/** The fact, in the exchange: "the unit hangs upside down". */
const HANGS: Readonly<Record<Mounting, string>> = {
  upright: 'The unit hangs upright',
  'top-left': 'The unit hangs on its side, its top to the left',
  'top-right': 'The unit hangs on its side, its top to the right',
  'upside-down': 'The unit hangs upside down',
};
export const hangsText = (mounting: Mounting): string => HANGS[mounting];

const BEAM: Readonly<Record<Along, string>> = {
  'left-right': 'It moves the beam left and right.',
  'up-down': 'It moves the beam up and down.',
};

/**
 * What is added on the ladder to the order to turn an adjuster of a unit on its side, where the adjuster's name would
 * mislead; undefined where it does not. The panel hears the name alone: that is right for both.
 */
export const beamText = (mounting: Mounting | undefined, axis: Axis): string | undefined =>
  mounting && isOnItsSide(mounting) ? BEAM[movesAlong(mounting, axis)] : undefined;

/** The name of an adjuster above such an order: as it is marked, not as it hangs. */
export const MARKED: Readonly<Record<Axis, string>> = {
  horizontal: 'adjuster marked horizontal',
  vertical: 'adjuster marked vertical',
};
