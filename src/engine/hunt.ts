import { advice, type TimedAdvice, turnBy } from './advice.ts';
import { predict } from './beam.ts';
import { canRaise } from './gain.ts';
import { isSamePlace } from './place.ts';
import { CAUSES } from './rules.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import type { View } from './view.ts';
import { type Place, widening } from './widening.ts';

/**
 * Distance between neighbouring places of the square, eighths: a turn, about a beam's full width (common
 * practice, no source).
 */
const PITCH = 8;
/** Rings of the square: 2 give 24 places, two turns each way. */
const RINGS = 2;

/**
 * Before anything is turned, once it was read how the pair was found. A search that begins in light by way of a wall finds the top of that light, and a cover held
 * at an end of the beam darkens both.
 */
export const aimFirst = ({ search, here }: View): TimedAdvice | undefined =>
  lacksAim(search) ? advice('aim-first', { kind: 're-aim' }, [here]) : undefined;

export const lacksAim = ({ aims, moves, unaimed, wasAligned }: Search): boolean =>
  aims === 0 && moves === 0 && !unaimed && !wasAligned;

/**
 * No signal was seen since the emitter was aimed: search for one. If it was seen earlier and that is no
 * longer valid, aiming finds it sooner than the square.
 */
export function nothingThere(view: View): TimedAdvice | undefined {
  const { search, here } = view;
  // Light here is light: which readings count, and with them a fit, is asked only in the dark.
  if (here?.level.kind !== 'below') return undefined;
  const { samples } = view;
  if (samples.some((s) => s.level.kind !== 'below')) return undefined;
  if (canRaise(view)) return advice('full-gain-to-find', { kind: 'gain', change: 'full' }, [here]);
  const wasSeen = search.samples.some((s) => s.level.kind !== 'below');
  if (search.aims === 0 || wasSeen) return advice('re-aim', { kind: 're-aim' }, [here]);
  const seen = (place: Place) => samples.some((s) => isSamePlace(s.turned, place));
  const next = widening(RINGS, PITCH).find((place) => !seen(place) && stepTo(view, place));
  const action = next && stepTo(view, next);
  if (action) return advice('widening-square', action, [here], { places: samples.length });
  if (search.checks >= search.aims) return advice('re-aim', { kind: 're-aim' }, [here]);
  return advice('nothing-there', { kind: 'check', causes: [...CAUSES.nothing] }, [here], {
    places: samples.length,
  });
}

/**
 * The signal was seen and is lost for more than one turn: go back to where it was strongest. If it is lost
 * there too, at full gain, the screws are not where we think.
 */
export function recoverSignal(view: View): TimedAdvice | undefined {
  const { here, samples, beam } = view;
  if (here?.level.kind !== 'below' || samples[samples.length - 2]?.level.kind !== 'below') return undefined;
  // Where the beam has no light, no signal can be lost.
  const expected = beam && predict(beam, here);
  if (expected && expected.value + 2 * expected.sd < here.level.db) return undefined;
  const strongest = samples.reduce((best, s) => (strength(s) >= strength(best) ? s : best), here);
  const action = stepTo(view, strongest.turned);
  if (action) return advice('recover-signal', action, [strongest, here]);
  if (canRaise(view)) return advice('full-gain-to-find', { kind: 'gain', change: 'full' }, [here]);
  return strongest === here ? undefined : advice('re-aim', { kind: 're-aim' }, [strongest, here]);
}

const strength = ({ level }: Sample): number =>
  level.kind === 'below'
    ? Number.NEGATIVE_INFINITY
    : level.kind === 'above'
      ? Number.POSITIVE_INFINITY
      : level.db;

/** The next turn on the way to a place, one adjuster at a time. */
export function stepTo(view: View, place: Readonly<Place>) {
  const { turned } = view.search;
  return (
    turnBy(view, 'horizontal', place.horizontal - turned.horizontal) ??
    turnBy(view, 'vertical', place.vertical - turned.vertical)
  );
}
