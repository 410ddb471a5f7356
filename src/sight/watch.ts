import type { MeterProfile } from '../model/profile.ts';
import { type Sight, shownNumber } from './characters.ts';
import type { Drift } from './drift.ts';
import { LOST_AFTER_MS, lookedBefore, lostBy } from './stretch.ts';

/** One frame of the camera, looked at. */
export interface Look {
  /** Milliseconds, of the phone's clock. */
  at: number;
  sight: Sight;
  drift: Drift;
  /** Brightness of the box, 0 to 255: its mean and its standard deviation. */
  mean: number;
  deviation: number;
}

/** What a person confirmed once: how many digits this display shows after the point. */
export interface Confirmed {
  decimals: number;
}

type Meter = Pick<MeterProfile, 'min' | 'max' | 'tolerance' | 'settleMs'>;

/** Below this a frame is not read. What other values would do: docs/sight.md. */
export const SURE = 0.9;
/** A display whose frame moved so far, in box heights, may show only a part of its number in the box. */
export const MOVED_BY = 0.15;
/** Below this likeness something else is before the camera. */
export const ALIKE = 0.35;
/** A box as dark as this (mean of 255), or with so little contrast (deviation), shows nothing. */
export const DARK_MEAN = 10;
export const FLAT = 2.5;
/** So many frames must be read and agree, over the meter's settling time, but never less than this. Milliseconds. */
export const FRAMES = 4;
export const SHORTEST_MS = 1_500;
/** Of the frames looked at while it settles, so many must have been readable, as a share. */
export const READABLE = 0.75;
/** A battery at or under this share is said. */
export const LOW_BATTERY = 0.15;

export type Doubt = 'moved' | 'dark' | 'unsure' | 'not-a-number' | 'other-point' | 'off-scale';

/** Why a frame is not read; undefined: it is. The first that holds. */
export function doubtAbout(look: Look, confirmed: Confirmed, meter: Meter): Doubt | undefined {
  if (look.mean < DARK_MEAN || look.deviation < FLAT) return 'dark';
  if (look.drift.by > MOVED_BY || look.drift.likeness < ALIKE) return 'moved';
  if (look.sight.belief < SURE) return 'unsure';
  const shown = shownNumber(look.sight.text);
  if (!shown) return 'not-a-number';
  if (shown.decimals !== confirmed.decimals) return 'other-point';
  if (shown.value < meter.min || shown.value > meter.max) return 'off-scale';
  return undefined;
}

/** How long the display must have shown the same. Milliseconds. */
const steadyMs = ({ settleMs }: Meter): number => Math.max(settleMs, SHORTEST_MS);

/** What the phone sees now. */
export type Watched =
  /** It has not seen enough frames yet, or the number changes. `value`: the newest that was readable. */
  | { kind: 'settling'; value?: number }
  /** The display has shown this for the meter's settling time, with `frames` of it read; `belief`: in the least sure of them. */
  | { kind: 'settled'; value: number; text: string; frames: number; belief: number }
  /** Nothing was readable for `LOST_AFTER_MS`, or from the beginning. */
  | { kind: 'lost'; why: Doubt };

interface Judged extends Look {
  doubt: Doubt | undefined;
  value: number;
}

/** The last looks, oldest first: no more than are needed. Plain data. */
export interface Watch {
  readonly confirmed: Confirmed;
  readonly looks: readonly Judged[];
}

export const watchFrom = (confirmed: Confirmed): Watch => ({ confirmed, looks: [] });

/** The watch after one more frame. A long gap, a move and a clock that goes back begin it anew. */
export function afterLook(watch: Watch, look: Look, meter: Meter): Watch {
  const doubt = doubtAbout(look, watch.confirmed, meter);
  const value = doubt === undefined ? (shownNumber(look.sight.text)?.value ?? Number.NaN) : Number.NaN;
  const kept = Math.max(steadyMs(meter), LOST_AFTER_MS);
  const before = doubt === 'moved' ? [] : lookedBefore(watch.looks, look.at, kept);
  return { ...watch, looks: [...before, { ...look, doubt, value }] };
}

/** What those frames show together. */
export function watched({ looks }: Watch, meter: Meter): Watched {
  const newest = looks.at(-1);
  if (!newest) return { kind: 'settling' };
  const lastReadable = looks.findLast(({ doubt }) => doubt === undefined);
  const why = newest.doubt === 'moved' ? 'moved' : lostBy(looks);
  if (why) return { kind: 'lost', why };
  if (!lastReadable) return { kind: 'settling' };
  const settled = newest.doubt === undefined ? settledOn(looks, newest, meter) : undefined;
  return settled ?? { kind: 'settling', value: lastReadable.value };
}

function settledOn(
  looks: readonly Judged[],
  newest: Judged,
  meter: Meter,
): Extract<Watched, { kind: 'settled' }> | undefined {
  // From the first frame of the time that it takes to settle, which is the last one before it.
  const first = looks.findLastIndex(({ at }) => at <= newest.at - steadyMs(meter));
  if (first < 0) return undefined;
  const window = looks.slice(first);
  const readable = window.filter(({ doubt }) => doubt === undefined);
  if (readable.length < FRAMES || readable.length < READABLE * window.length) return undefined;
  const values = readable.map(({ value }) => value);
  if (Math.max(...values) - Math.min(...values) > meter.tolerance + 1e-9) return undefined;
  const same = readable.filter(({ value }) => value === newest.value);
  // A number that flickers between two is the one that was seen more often, or the newer.
  if (same.length * 2 < readable.length) return undefined;
  return {
    kind: 'settled',
    value: newest.value,
    text: newest.sight.text,
    frames: readable.length,
    belief: Math.min(...same.map(({ sight }) => sight.belief)),
  };
}
