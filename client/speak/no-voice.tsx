import type { SpeakerView } from './use-speaker.ts';

/** Shown where neither the phone's own voice nor the server's could be heard. */
export const NoVoice = ({ speaker }: { speaker: SpeakerView }) =>
  speaker.silent ? <p class="failure">No voice can be heard on this phone. Read the screen.</p> : null;
