/** What the talk button, the microphone and the voice say about themselves. */

export const NO_WORDS = 'No words were heard. Say it again, or type it.';
export const NO_LINK =
  'There is no link now. Type it, or turn on speech on this phone in the menu: your words are kept and sent later.';
export const LINK_LOST = 'The link was lost. Say it again when it is back, or type it: typed words are kept.';
export const NO_ON_DEVICE =
  'The speech model could not be loaded. Turn it on again when there is a link, or type instead.';

export const handsFreeStoppedText = (why: string): string => `Hands-free talk stopped: ${why}`;
export const PHONE_TOO_SLOW = 'This phone is too slow for it.';
export const NO_DETECTOR_ANSWER = 'the voice detector gave no answer';
export const NO_LETTERS = 'the speech model gave no letters';
export const modelFileMissingText = (file: string): string => `the speech model is not available: ${file}`;

export const MICROPHONE_SILENT =
  'The microphone gives no sound. Close other apps that use it, then try again, or type instead.';
export const MICROPHONE_INSECURE =
  'Browsers allow the microphone only on a secure page. Type instead. The page /trust of this server says how to turn it on.';
const MICROPHONE_FAULTS: Readonly<Record<string, string>> = {
  NotAllowedError:
    "The microphone is not allowed. Allow it for this page in the browser's site settings, or type instead.",
  NotFoundError: 'This device has no microphone. Type instead.',
  NotReadableError: 'Another app is using the microphone. Close it and try again, or type instead.',
};

/** `error`: a `DOMException` of `getUserMedia`. */
export const microphoneFaultText = (error: Error): string =>
  MICROPHONE_FAULTS[error.name] ?? `The microphone could not be opened: ${error}. Type instead.`;
