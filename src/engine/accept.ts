import type { Seq } from '../model/ids.ts';
import { AXES, type Axis, otherAxis } from '../model/turns.ts';
import { unreadAround } from './around.ts';
import { CLOSE, halfWidth, nearPeak, shortfallDb, sideReach } from './beam.ts';
import { isGoneBehind } from './behind.ts';
import { higherReading, lower } from './compare.ts';
import { doubt } from './doubt.ts';
import { hasUnseen } from './explore.ts';
import { FRESH_MS } from './fresh.ts';
import { fromDb } from './level.ts';
import { provenLine, readAtGain } from './line.ts';
import { lostOnReturn } from './loss.ts';
import type { Missing } from './missing.ts';
import type { Place } from './place.ts';
import { missingByTrends } from './proven.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import type { Sides } from './sides.ts';
import { agree } from './stay.ts';
import { look, type View } from './view.ts';
import { isAsForetold, unseenSide, walkedSides } from './walked.ts';

/** The fitted peak may be this much higher than the accepted place, uncertainty included. dB. */
export const SHORTFALL_ALLOWED_DB = 0.2;

/** What is missing for acceptance here and now; empty if nothing is. */
export function missingForAccept(search: Search, now: number): Missing[] {
  if (search.looks) return missingByTrends(search, now);
  const view = look(search);
  const { here } = view;
  const { meter } = search;
  if (search.path !== 'clear') return [{ id: 'clear-path', figures: {} }];
  if (!here) return [{ id: 'settled-reading', figures: {} }];
  const missing: Missing[] = [];
  if (search.floor ? lostOnReturn(view) : doubt(view)) missing.push({ id: 'settled-doubt', figures: {} });
  if (here.level.kind === 'above') missing.push({ id: 'not-saturated', figures: {} });
  if (here.reading.kind !== 'value') {
    missing.push({ id: 'in-band', figures: { low: meter.bandLow, high: meter.bandHigh } });
  } else if (here.reading.value < meter.bandLow || here.reading.value > meter.bandHigh) {
    const figures = { reading: here.reading.value, low: meter.bandLow, high: meter.bandHigh };
    missing.push({ id: 'in-band', figures });
  }
  for (const axis of AXES) {
    const { below, above } = provenSides(view, here, axis);
    if (!below || !above) {
      missing.push({ id: `bracket-${axis}`, figures: { below: below ? 1 : 0, above: above ? 1 : 0 } });
    }
  }
  if (search.floor ? unreadAround(search, here, here) : hasUnseen(view))
    missing.push({ id: 'second-peak', figures: {} });
  const higher = higherReading(search.floor ? search.samples : view.samples, here);
  if (higher?.level.kind === 'level' && here.level.kind === 'level') {
    const figures = { best: fromDb(higher.level.db, meter), reading: fromDb(here.level.db, meter) };
    missing.push({ id: 'highest-reading', figures });
  }
  if (!search.floor) {
    // Asked for only here: the plain search needs no fit.
    const { beam } = view;
    const shortfall = beam ? shortfallDb(beam, here) : Number.POSITIVE_INFINITY;
    const isClose = search.walk
      ? AXES.every((axis) => unseenSide(view, here, axis) === undefined) && isAsForetold(view, here)
      : AXES.every((axis) => isSeenClose(view, here, axis));
    if (shortfall > SHORTFALL_ALLOWED_DB || !isClose) {
      const reading = here.reading.kind === 'value' ? { reading: here.reading.value } : {};
      missing.push({ id: 'at-peak', figures: { shortfall, ...reading } });
    }
  }
  if (!blockingPassed(search, here)) missing.push({ id: 'blocking-check', figures: {} });
  const held = here.to - here.from;
  if (held < meter.holdMs) {
    missing.push({ id: 'steady-hold', figures: { held: held / 1000, needed: meter.holdMs / 1000 } });
  }
  if (now - here.to > FRESH_MS)
    missing.push({ id: 'fresh-reading', figures: { age: (now - here.to) / 1000 } });
  return missing;
}

/** The path was blocked here, the reading went to nothing, and it came back the same. */
export function blockingPassed(search: Search, here: Sample): boolean {
  const { before, dark } = search.blocking;
  if (dark !== true) return false;
  if (before) return agree(before.reading, here.reading, search.meter);
  // A person who walks may put the card up before this place was read: that it is as bright as foretold is judged apart.
  return search.walk !== undefined && isGoneBehind(search, here);
}

/** The sides that acceptance rests on: of the plain search's own lines where it has taken over. */
function provenSides(view: View, here: Sample, axis: Axis): Sides {
  const { floor, walk } = view.search;
  if (!floor) return walk ? walkedSides(view, here, axis) : sides(view, here, axis);
  const line = provenLine(readAtGain({ search: view.search, here }), here, axis);
  return { below: line?.below, above: line?.above };
}

/**
 * Lower settled readings on each side of a place along one adjuster, at its gain. They are judged along one
 * line through the peak: the other adjuster is where it was for the middle reading, and both are near the
 * place.
 */
export function sides({ samples, beam, search }: View, place: Place, axis: Axis): Sides {
  const other = otherAxis(axis);
  const near = nearPeak(beam, other);
  const found: { below: Sample | undefined; above: Sample | undefined } = {
    below: undefined,
    above: undefined,
  };
  const here = place.turned[axis];
  const reach = sideReach(beam, axis, search.adjusters.maxStep);
  const atGain = samples.filter(
    (s) => s.gain === place.gain && Math.abs(s.turned[other] - place.turned[other]) <= near,
  );
  for (const centre of atGain) {
    if (Math.abs(centre.turned[axis] - here) > 1) continue;
    const line = atGain.filter((s) => s.turned[other] === centre.turned[other] && lower(s, centre));
    const below = line.findLast((s) => s.turned[axis] <= here - reach);
    const above = line.findLast((s) => s.turned[axis] >= here + reach);
    if (below && above) return { below, above };
    found.below ??= below;
    found.above ??= above;
  }
  return found;
}

/**
 * A reading next to the peak, where the beam is a parabola and other light is faint. Far readings alone would
 * put the peak in the wrong place if a reflection brightens one of them.
 */
export function isSeenClose({ samples, beam }: View, place: Place, axis: Axis): boolean {
  if (!beam) return false;
  const other = otherAxis(axis);
  const near = nearPeak(beam, other);
  const half = Math.max(CLOSE, halfWidth(beam, axis));
  return samples.some((s) => {
    const off = Math.abs(s.turned[axis] - place.turned[axis]);
    const isOnLine = Math.abs(s.turned[other] - place.turned[other]) <= near;
    return s.gain === place.gain && s.level.kind === 'level' && isOnLine && off >= CLOSE && off <= half;
  });
}

/** The entries that acceptance rests on, oldest first. */
export function evidenceSeqs(view: View, here: Sample): Seq[] {
  const both = AXES.flatMap((axis) => {
    const { below, above } = provenSides(view, here, axis);
    return [below, above];
  });
  const seqs = [...both, here].flatMap((s) => s?.seqs.slice(-1) ?? []);
  return [...new Set(seqs)].sort((a, b) => a - b);
}
