import { AXES, type Eighths } from '../model/turns.ts';
import { BESIDE, isAcross, isAt, isWide, type Look, signOf } from './looks.ts';
import type { PerAxis } from './sample.ts';
import type { Search } from './search.ts';

/**
 * The look around a peak that only trends have shown: places as far as the beam can be from where the eye aimed, each of them
 * to be seen darker than the peak. A side lobe or a reflection has all that makes a peak, but for this.
 */

type Place = PerAxis<Eighths>;

/** As far the beam may be from where the eye aimed: 15 cm at 8 m, with 0.7 degrees a turn, and one more. Eighths. */
const AIM_ERROR = 13;
/** The same where nobody could aim: as far as a widening square of two turns reaches. */
const UNAIMED = 20;

/**
 * Between neighbouring places. The narrowest beam that is thought of falls to half its power within 4 eighths; where it is at
 * least 4 dB brighter than the other light, it is brighter within 4.6, and no place is farther than that from one of these but
 * for a hair. Where the light is wide, so is the beam that it would belong to. Eighths.
 */
const PITCH = 7;
const PITCH_WIDE = 14;

/** No second peak lies so near to a first one. Eighths. */
const NEAR = 7;

/** A look so near to a place, on each adjuster, has seen it: a share of the pitch. */
const SEEN_WITHIN = 0.5;

/**
 * The looks at places that are known to be no brighter than `peak`: each was held against one that is already known, and was no
 * brighter than it.
 */
function darkerThan(looks: readonly Look[], peak: Look): Set<Look> {
  const known = new Set<Look>(looks.filter((look) => isAt(look, peak.turned)));
  for (let size = 0; size !== known.size; ) {
    size = known.size;
    for (let i = 1; i < looks.length; i++) {
      const [from, to] = [looks[i - 1], looks[i]];
      if (!from || !to || known.has(from) === known.has(to)) continue;
      const sign = signOf(from, to);
      if (sign === undefined) continue;
      if (known.has(from) ? sign <= 0 : sign >= 0) known.add(known.has(from) ? to : from);
    }
    for (const look of looks)
      if (look.seen === 'nothing' && look.gain === peak.gain && peak.seen !== 'nothing') known.add(look);
  }
  return known;
}

/** The places that must be seen darker, around a peak. None lies on a line with it, so that each is held against it alone. */
function placesAround({ turned }: Look, wide: boolean, { limits, aims }: Search): Place[] {
  const pitch = wide ? PITCH_WIDE : PITCH;
  const radius = aims > 0 ? AIM_ERROR : UNAIMED;
  const on = (axis: 'horizontal' | 'vertical'): Eighths[] => {
    const steps = Math.ceil((radius + Math.abs(turned[axis])) / pitch) + 1;
    return Array.from({ length: 2 * steps }, (_, i) =>
      Math.round(turned[axis] + (i - steps + 0.5) * pitch),
    ).filter((at) => at >= limits[axis].low && at <= limits[axis].high);
  };
  return on('horizontal')
    .flatMap((horizontal) => on('vertical').map((vertical) => ({ horizontal, vertical })))
    .filter((place) => Math.hypot(place.horizontal, place.vertical) <= radius)
    .filter((place) => distance(place, turned) >= NEAR);
}

const distance = (a: Place, b: Place): number =>
  Math.hypot(a.horizontal - b.horizontal, a.vertical - b.vertical);

/** The place around a peak that is to be seen next; undefined where all were seen darker. */
export function unseenAround(search: Search, looks: readonly Look[], peak: Look): Place | undefined {
  const here = looks.at(-1) ?? peak;
  const wide = isWide(looks, peak);
  if (wide && search.aims > 0 && distance(peak.turned, { horizontal: 0, vertical: 0 }) <= AIM_ERROR)
    return undefined;
  const reach = SEEN_WITHIN * (wide ? PITCH_WIDE : PITCH);
  const darker = [...darkerThan(looks, peak)];
  const isSeen = (place: Place) =>
    darker.some(({ turned }) => AXES.every((axis) => Math.abs(turned[axis] - place[axis]) < reach));
  // Away from the peak it only gets darker, which tells at once; towards it, the two must be held against each other.
  const cost = (place: Place) => turns(search, here.turned, place) + (isNearer(place, here, peak) ? 2 : 0);
  return placesAround(peak, wide, search)
    .filter((place) => !isSeen(place))
    .reduce<Place | undefined>(
      (best, place) => (best && cost(best) <= cost(place) ? best : place),
      undefined,
    );
}

const isNearer = (place: Place, here: Look, peak: Look): boolean =>
  distance(place, peak.turned) < distance(here.turned, peak.turned);

const turns = ({ adjusters }: Search, from: Place, to: Place): number =>
  AXES.reduce((sum, axis) => sum + Math.ceil(Math.abs(to[axis] - from[axis]) / adjusters.maxStep), 0);

/** Where the look around leads from the last look: to the next place, back to the peak to hold the two against each other, or home. */
export function wayAround(search: Search, looks: readonly Look[], peak: Look): Place | undefined {
  const last = looks.at(-1);
  if (!last) return undefined;
  const isOff = AXES.every((axis) => Math.abs(last.turned[axis] - peak.turned[axis]) > BESIDE);
  const next = unseenAround(search, looks, peak);
  if (!next) return isOff ? peak.turned : undefined;
  const darker = darkerThan(looks, peak);
  if (!isAt(last, peak.turned) && !darker.has(last)) return peak.turned;
  const before = isAt(last, peak.turned) ? looks.findLast((look) => !isAt(look, peak.turned)) : undefined;
  return before && !darker.has(before) && isAcross(before, last) ? before.turned : next;
}
