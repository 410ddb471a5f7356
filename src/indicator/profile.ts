import { Feature, type Profile } from '../model/sensor.ts';

export const FEATURES = Feature.options;

/** One feature over a stretch of time: its middle, and how far single looks scatter. */
export interface Spread {
  readonly value: number;
  readonly sd: number;
}

/** All that was heard or seen over a stretch of time; a feature that is not there is missing. */
export type Shown = Partial<Record<Feature, Spread>>;

/** Why nothing was learnt. */
export type Untaught = 'nothing-there' | 'alike' | 'none-like-some' | 'no-order';

/** So little scatter no microphone or camera has: what looks quieter was not looked at long enough. dB, semitones, degrees, pulses a second. */
const LEAST_SD: Record<Feature, number> = { level: 0.2, pitch: 0.1, hue: 2, rate: 0.05 };
/** Two of the taught must lie so many times the scatter apart, or it was taught wrong. Our own figure, no source. */
const APART = 8;

const scatter = (feature: Feature, ...spreads: (Spread | undefined)[]): number =>
  Math.max(LEAST_SD[feature], ...spreads.flatMap((spread) => spread?.sd ?? []));

/** Chooses the feature that tells some from plenty best, and none from some at all. */
export function teach(none: Shown, some: Shown, plenty: Shown): Profile | Untaught {
  const there = FEATURES.filter((feature) => some[feature] && plenty[feature]);
  if (there.length === 0) return 'nothing-there';
  const faults: Untaught[] = [];
  const good = there.flatMap((feature): { profile: Profile; apart: number }[] => {
    const [at0, at1, at2] = [none[feature], some[feature], plenty[feature]];
    if (!at1 || !at2) return [];
    const sd = scatter(feature, at0, at1, at2);
    const up = difference(feature, at1.value, at2.value);
    const apart = Math.abs(up) / sd;
    const fault = untaught(apart, at0 && difference(feature, at0.value, at1.value), up, sd);
    if (fault) {
      faults.push(fault);
      return [];
    }
    const profile = { feature, ...(at0 && { none: at0.value }), some: at1.value, plenty: at2.value, sd };
    return [{ profile, apart }];
  });
  const best = good.reduce<(typeof good)[number] | undefined>(
    (most, each) => (most && most.apart >= each.apart ? most : each),
    undefined,
  );
  return best?.profile ?? faults.sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b))[0] ?? 'alike';
}

/** The one that says most of what to do. */
const ORDER: readonly Untaught[] = ['no-order', 'none-like-some', 'alike', 'nothing-there'];

function untaught(apart: number, fromNone: number | undefined, up: number, sd: number): Untaught | undefined {
  if (apart < APART) return 'alike';
  if (fromNone === undefined) return undefined;
  if (Math.abs(fromNone) < APART * sd) return 'none-like-some';
  return Math.sign(fromNone) === Math.sign(up) ? undefined : 'no-order';
}

/** From one value to another; a hue goes the short way round. */
export function difference(feature: Feature, from: number, to: number): number {
  const by = to - from;
  return feature === 'hue' ? ((((by + 180) % 360) + 360) % 360) - 180 : by;
}
