import type { Profile } from '../model/sensor.ts';
import { lookedBefore, lostBy } from '../sight/stretch.ts';
import type { Shown } from './profile.ts';
import { type Before, type Sensed, sense } from './sense.ts';
import { type Sample, shownIn } from './window.ts';

/** Why a moment tells nothing of the indicator. */
export type Doubt = 'moved' | 'dark' | 'noisy' | 'silent';

/** One piece of sound, or one picture, looked at. */
export interface Moment extends Sample {
  readonly doubt?: Doubt | undefined;
}

/** A word rests on so long a stretch. Milliseconds; our own figures, no source. */
export const LOOK_MS = 3_000;
/** One that says that nothing is there, or that goes on and off, on a longer one: a slow beep must fall into it. */
export const SLOW_MS = 6_000;
/** Of the moments, so many must tell something, as a share. */
export const TELLING = 0.75;
/** What changes by itself, or fits nothing, is waited for so long before that is said. */
export const PATIENCE_MS = 20_000;

/** What the phone makes of what it heard or saw since the light was to be looked at. */
export type Sensing =
  | { readonly kind: 'settling' }
  | { readonly kind: 'sensed'; readonly word: Sensed; readonly place?: number; readonly moments: number }
  | { readonly kind: 'lost'; readonly why: Doubt | 'unclear' };

const SETTLING: Sensing = { kind: 'settling' };

/** The moments after one more: no more than are needed. A gap, a move and a clock that goes back begin them anew. */
export function withMoment(moments: readonly Moment[], moment: Moment): readonly Moment[] {
  const isMovedNow = moment.doubt === 'moved' && moments.at(-1)?.doubt !== 'moved';
  return [...(isMovedNow ? [] : lookedBefore(moments, moment.at, SLOW_MS)), moment];
}

/** `since`: from when on the moments count, as the hands were off; `before`: what the last look said. Milliseconds. */
export function sensed(
  moments: readonly Moment[],
  since: number,
  profile: Profile,
  before: Before | undefined,
): Sensing {
  const newest = moments.at(-1);
  if (!newest) return SETTLING;
  const why = lostBy(moments);
  if (why) return { kind: 'lost', why };
  const window = moments.filter(({ at }) => at >= since);
  const telling = window.filter(({ doubt }) => doubt === undefined);
  const [first] = window;
  if (!first || newest.doubt || telling.length < TELLING * window.length) return SETTLING;
  const span = newest.at - first.at;
  const shown = shownIn(telling);
  if (span < (isSlow(profile, shown) ? SLOW_MS : LOOK_MS)) return SETTLING;
  const now = isFaint(shown, telling) ? undefined : sense(profile, shown, before);
  if (now && now.word !== 'changing') {
    if (now.word === 'nothing' && span < SLOW_MS) return SETTLING;
    return { kind: 'sensed', ...now, moments: telling.length };
  }
  if (newest.at - since < PATIENCE_MS) return SETTLING;
  return now ? { kind: 'sensed', ...now, moments: telling.length } : { kind: 'lost', why: 'unclear' };
}

/** Too seldom there to tell what it does, and still there: that is not nothing. */
const isFaint = ({ level }: Shown, moments: readonly Moment[]): boolean =>
  level === undefined && moments.some(({ db }) => db !== undefined);

const isSlow = ({ feature }: Profile, { rate }: Shown): boolean =>
  feature === 'rate' || rate === undefined || rate.value > 0;
