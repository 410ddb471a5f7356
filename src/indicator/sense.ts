import { difference, type Profile, type Shown } from './profile.ts';

/** What is said of the light, in the words of a person who sees an indicator. */
export type Sensed = 'nothing' | 'too-strong' | 'rising' | 'falling' | 'steady';

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

/**
 * What is seen now, and its place for the next look. `before`: the place of the last one. Undefined where it changes by itself: then nothing
 * is said, and it is looked at longer.
 */
export function sense(
  profile: Profile,
  shown: Shown,
  before: number | undefined,
): { readonly word: Sensed; readonly place?: number } | undefined {
  const now = shown[profile.feature];
  if (!now) return { word: 'nothing' };
  if (now.sd > RESTLESS * profile.sd) return undefined;
  const place = placeOf(profile, now.value);
  if (profile.none !== undefined && place < placeOf(profile, profile.none) / 2) return { word: 'nothing' };
  const noise =
    (CHANGE_SDS * profile.sd) / Math.abs(difference(profile.feature, profile.some, profile.plenty));
  if (place >= 1 - Math.max(FULL, noise)) return { word: 'too-strong' };
  const change = before === undefined ? 0 : place - before;
  if (Math.abs(change) <= Math.max(CHANGE_SHARE, noise)) return { word: 'steady', place };
  return { word: change > 0 ? 'rising' : 'falling', place };
}
