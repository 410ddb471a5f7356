/** What is said when the server cannot listen to people, or cannot speak to them. */

export const NO_ENGINE = 'There is no speech engine here. Type it.';
export const HALF_SAMPLE = 'Sound must come in whole samples of two bytes.';
export const SOUND_TOO_FAST = 'Sound comes too fast. Say it again.';
export const NO_TALK = 'No such talk is open here. Say it again.';

const READ_SCREEN = 'Read the screen.';
export const NO_VOICE = `This server was started without a voice. ${READ_SCREEN}`;
export const NOTHING_TO_SAY = 'There is nothing to say in this text.';
/** `why`: a whole sentence. */
export const voiceFailedText = (why: string): string => `${why} ${READ_SCREEN}`;
