/** What a seat may have to say before the code of talking has come. */

export const TALK_NOT_LOADED =
  'Talking could not be loaded. Try again when there is a link, or type instead.';

/** Said to try the voice. */
export const VOICE_TEST = 'This is how I speak.';
