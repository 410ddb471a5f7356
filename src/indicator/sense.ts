import type { Profile } from '../model/sensor.ts';
import { difference, type Shown } from './profile.ts';

/** What is said of the light, in the words of a person who sees an indicator. */
export type Sensed = 'nothing' | 'too-strong' | 'rising' | 'falling' | 'steady' | 'changing';

/** What the last look said: its place, or that there was nothing, or too much to tell. */
export type Before = number | 'nothing' | 'too-strong';

/** Against the last look, less than so many times the scatter, or than this share of the way from some to plenty, is no change. */
const CHANGE_SDS = 3;
const CHANGE_SHARE = 0.03;
/** So near to plenty more would not be seen: a share of the way from some to plenty. */
const FULL = 0.05;
/** While single looks scatter so many times as much as when it was taught, it still changes by itself. */
const RESTLESS = 4;

/** How far along the way from some to plenty: 0 at some, 1 at plenty, below 0 toward none. */
export function placeOf({ feature, some, plenty }: Profile, value: number): number {
  return difference(feature, some, value) / difference(feature, some, plenty);
}

export interface Sense {
  readonly word: Sensed;
  readonly place?: number;
}

/** What is seen now, and its place for the next look. Undefined where there is something that fits nothing that was taught. */
export function sense(profile: Profile, shown: Shown, before: Before | undefined): Sense | undefined {
  const now = shown[profile.feature];
  if (!now) return isGone(profile, shown) ? { word: 'nothing' } : undefined;
  if (now.sd > RESTLESS * profile.sd) return { word: 'changing' };
  const place = placeOf(profile, now.value);
  if (profile.none !== undefined && place < placeOf(profile, profile.none) / 2) return { word: 'nothing' };
  const noise =
    (CHANGE_SDS * profile.sd) / Math.abs(difference(profile.feature, profile.some, profile.plenty));
  if (place >= 1 - Math.max(FULL, noise)) return { word: 'too-strong' };
  return { word: against(before, place, Math.max(CHANGE_SHARE, noise)), place };
}

/** Gone as it was when none was taught. A rate that is only too slow to be known is not gone: something is there. */
const isGone = ({ feature, none }: Profile, shown: Shown): boolean =>
  none === undefined && !(feature === 'rate' && shown.level);

function against(before: Before | undefined, place: number, least: number): Sensed {
  if (before === 'nothing') return 'rising';
  if (before === 'too-strong') return 'falling';
  const change = before === undefined ? 0 : place - before;
  if (Math.abs(change) <= least) return 'steady';
  return change > 0 ? 'rising' : 'falling';
}
