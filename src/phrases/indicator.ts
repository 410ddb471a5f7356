import type { Feature, Profile, SensorLook, SensorSort, SensorState } from '../model/sensor.ts';
import { CAMERA_NOTICES } from './camera.ts';

/** A phone at the panel that follows a tone or a lamp, as it was taught. */

const BEGUN: Readonly<Record<SensorSort, string>> = {
  tone: 'The phone at the panel listens to the tone now.',
  lamp: 'The phone at the panel looks at the lamp now.',
};
const ENDED: Readonly<Record<SensorSort, string>> = {
  tone: 'The phone at the panel has stopped listening.',
  lamp: 'The phone at the panel has stopped looking at the lamp.',
};
const LOST: Readonly<Record<Exclude<SensorState, 'sensing' | 'ended'>, string>> = {
  moved: 'The phone at the panel has lost the lamp: it was moved.',
  dark: 'The phone at the panel sees nothing around the lamp: it is too dark.',
  noisy: 'The phone at the panel cannot tell the tone: it is too loud there.',
  silent: 'The phone at the panel hears nothing at all: its microphone is off.',
  unclear: 'The phone at the panel cannot tell what the indicator does.',
  'battery-low': CAMERA_NOTICES['battery-low'],
};

const GOES_BY: Readonly<Record<Feature, string>> = {
  level: 'It was taught: what counts is how strong it is.',
  pitch: 'It was taught: what counts is its pitch.',
  hue: 'It was taught: what counts is its colour.',
  rate: 'It was taught: what counts is how often it goes on.',
};
export const goesByText = ({ feature }: Pick<Profile, 'feature'>): string => GOES_BY[feature];

/** Said on both phones, when it begins. */
export function sensorNotice({
  sort,
  state,
  taught,
}: {
  sort: SensorSort;
  state: SensorState;
  taught?: Profile | undefined;
}): string {
  if (state === 'ended') return ENDED[sort];
  if (state !== 'sensing') return LOST[state];
  return taught ? `${BEGUN[sort]} ${goesByText(taught)}` : BEGUN[sort];
}

const BY: Readonly<Record<SensorSort, string>> = {
  tone: 'by a tone, taught profile',
  lamp: 'by a lamp, taught profile',
};
/** "rising (by a tone, taught profile, 30 moments)" */
export const bySensorText = (text: string, { sort, moments }: SensorLook): string =>
  `${text} (${BY[sort]}, ${moments} moments)`;

/** To a person who says it where a phone tells it. */
export const SENSOR_TELLS = 'The phone at the panel tells what the light does. Only what it tells counts.';
