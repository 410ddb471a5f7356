import type { Untaught } from '../indicator/profile.ts';
import type { Sensed } from '../indicator/sense.ts';
import type { SensorSort, SensorState } from '../model/sensor.ts';

/** The page of a phone at the panel that is taught a tone or a lamp, and follows it. */

export const FOLLOW_THE_INDICATOR = 'This phone follows the indicator';
export const WHICH_INDICATOR =
  'What tells of the light at the panel? Prop this phone there, so that nobody has to hold it.';
export const SORT_KEYS: Readonly<Record<SensorSort, string>> = { tone: 'A tone', lamp: 'A lamp' };

export const HOW_TO_TEACH: Readonly<Record<SensorSort, string>> = {
  tone: 'Now show it the tone three times. Press, and be quiet until it says that it has learnt. Leave the phone as it stands.',
  lamp: 'Draw the box close round the lamp. Around it must be edges to see, such as those of the panel. Then show it the lamp three times: press, and keep out of the picture.',
};
export const LAMP_BOX = 'The box round the lamp. The arrow keys move it; with Shift they change its size.';

/** In this order. */
export const LESSONS = ['none', 'some', 'plenty'] as const;
export type Lesson = (typeof LESSONS)[number];
export const SHOW_ME: Readonly<Record<Lesson, { title: string; how: string; key: string }>> = {
  none: {
    title: 'Show me none',
    how: 'No light at all: cover the beam.',
    key: 'This is none',
  },
  some: {
    title: 'Show me some',
    how: 'So little light that you can just tell it from none.',
    key: 'This is some',
  },
  plenty: {
    title: 'Show me plenty',
    how: 'So much light that more changes nothing.',
    key: 'This is plenty',
  },
};
export const LEARNT = 'Learnt';
export const LEARNING = 'Learning: keep still';
export const BEGIN_AFTER = 'Begin';
/** Time to walk to where the light is set. Seconds. */
export const DELAYS: readonly { seconds: number; label: string }[] = [
  { seconds: 3, label: 'soon after I press' },
  { seconds: 60, label: '1 minute after I press' },
  { seconds: 180, label: '3 minutes after I press' },
];
export const waitsText = (seconds: number): string => `Begins in ${seconds} s`;
export const ONCE_MORE = 'Teach it once more';
export const BEGIN_TO_FOLLOW = 'Follow it';

export const UNTAUGHT: Readonly<Record<Untaught | 'lost', string>> = {
  'nothing-there':
    'Nothing was there at some or at plenty. Bring the phone closer, or choose the other kind of indicator.',
  alike: 'Some and plenty looked or sounded alike. Show it less at some, and more at plenty.',
  'none-like-some': 'None and some looked or sounded alike. Show it a little more at some.',
  'no-order': 'Some did not lie between none and plenty. Show it all three once more, in this order.',
  lost: 'It could not hear or see well enough just then. Try that one again.',
};

/** Very large, to be seen from afar. */
export const SENSING: Readonly<
  Record<Sensed | 'settling' | Exclude<SensorState, 'sensing' | 'battery-low' | 'ended'>, string>
> = {
  nothing: 'Nothing',
  'too-strong': 'Too strong',
  rising: 'Rising',
  falling: 'Falling',
  steady: 'Steady',
  changing: 'Keeps changing',
  settling: 'Waits',
  moved: 'Moved!',
  dark: 'Too dark!',
  noisy: 'Too loud!',
  silent: 'Hears nothing!',
  unclear: 'Not clear!',
};

export const SENSOR_TROUBLE: Readonly<Record<'moved' | 'dark' | 'noisy' | 'silent' | 'unclear', string>> = {
  moved: 'Put the phone back, or teach it once more. Nothing is told until then.',
  dark: 'Give the panel light, or uncover the camera. Nothing is told until then.',
  noisy: 'It is louder than when it was taught. Wait, or stop the noise. Nothing is told until then.',
  silent: 'Look whether another app has the microphone. Nothing is told until then.',
  unclear: 'It fits nothing that it was taught. Look at the indicator, or teach it once more.',
};
export const NOTHING_TOLD_YET =
  'It tells what the light does each time it is asked for. Nothing was asked for yet.';
export const LOUDNESS_CHANGED =
  'This browser changes the loudness of the microphone by itself: only the pitch, or how often it goes on, can be followed.';
