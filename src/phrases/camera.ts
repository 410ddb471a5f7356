import type { CameraReading, CameraState } from '../model/camera.ts';

/** Said on both phones, when it begins. */
export const CAMERA_NOTICES: Readonly<Record<CameraState, string>> = {
  watching: 'The phone at the panel reads the meter now.',
  moved: 'The phone at the panel has lost the meter: it was moved.',
  dark: 'The phone at the panel cannot see the meter: it is too dark.',
  unreadable: 'The phone at the panel cannot read the meter.',
  'battery-low': 'The battery of the phone at the panel is low.',
  ended: 'The phone at the panel has stopped reading the meter.',
};

/** "47 (read by camera, 5 frames, 99.2 % sure)". Never rounded up to certainty. */
export const byCameraText = (text: string, { frames, belief }: CameraReading): string =>
  `${text} (read by camera, ${frames} frames, ${Math.floor(belief * 1_000) / 10} % sure)`;

export const WATCH_THE_METER = 'This phone watches the meter';
export const PROP_IT = 'Prop the phone so that it stands by itself and sees the number large and straight.';
export const DRAW_THE_BOX =
  'Draw a box round the number, close, with all its places in it: also those that are blank now. Leave out the unit.';
export const BOX_TOO_SMALL = 'The number is too small in the picture. Bring the phone closer.';
export const READS_NOTHING =
  'It reads no number yet. Bring the phone closer, turn it out of the glare, or draw the box again.';
export const READER_LOADS = 'The reader is loading.';
export const BOX_LABEL = 'The box round the number. The arrow keys move it; with Shift they change its size.';
export const isItText = (text: string): string => `Yes, the meter shows ${text}`;
export const WHEN_IT_IS_RIGHT =
  'Is it right? Compare it with the meter, point and sign too. Not for figures whose zero has a dot or a stroke in it: it may take them for an eight.';
export const OFF_SCALE = 'This number is not on the scale of the meter that the job was opened with.';

/** Very large, to be seen from afar. */
export const WATCHING = {
  settled: 'Sees it',
  settling: 'Waits: it changes',
  moved: 'Moved!',
  dark: 'Too dark!',
  unreadable: 'Cannot read it!',
} as const;

export const WHAT_TO_DO: Readonly<Record<'moved' | 'dark' | 'unreadable', string>> = {
  moved: 'Put the phone back, or draw the box again. Nothing is read until then.',
  dark: 'Give the display light, or wake it. Nothing is read until then.',
  unreadable:
    'Look for glare, for something in the way, and at the display itself. Nothing is read until then.',
};

/** `at`: a time of day. */
export const toldText = (text: string, at: string): string => `Last told: ${text}, ${at}`;
export const NOTHING_TOLD = 'It tells the number each time it is asked for. Nothing was asked for yet.';
export const BATTERY_LOW = 'The battery is low: plug the phone in.';

export const CAMERA_INSECURE =
  'Browsers allow the camera only on a secure page. The page /trust of this server says how to turn it on.';
const CAMERA_FAULTS: Readonly<Record<string, string>> = {
  NotAllowedError: "The camera is not allowed. Allow it for this page in the browser's site settings.",
  NotFoundError: 'This device has no camera.',
  NotReadableError: 'Another app is using the camera. Close it and try again.',
};

/** `error`: a `DOMException` of `getUserMedia`. */
export const cameraFaultText = (error: Error): string =>
  CAMERA_FAULTS[error.name] ?? `The camera could not be opened: ${error}.`;
export const readerFaultText = (error: Error): string =>
  `The reader of the display does not work: ${error.message}.`;
