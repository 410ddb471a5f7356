/** Said on both phones when it begins, and to whoever comes later. */
export const soundKeptText = (days: number): string =>
  `From now on the sound of what you say is kept with this record for ${days === 1 ? 'one day' : `${days} days`}. Both of you can turn it off in the menu.`;
export const SOUND_NOT_KEPT =
  'The sound of what you say is no longer kept. What was kept before is deleted when its days are over.';

export const PRACTICE_SOUND = 'Practice keeps nothing, and no sound.';

/** In the menu of a seat. */
export const SOUND_TITLE = 'Sound of what is said';
export const SOUND_IS_OFF = 'Not kept: the server listens, writes down the words, and forgets the sound.';
export const soundIsOn = (days: number): string =>
  `Kept with the record for ${days} days, so that a supervisor can listen to a reading that is doubted.`;
export const keepSoundButton = (days: number): string => `Keep the sound for ${days} days`;
export const STOP_KEEPING = 'Do not keep the sound';
export const SOUND_ON_PHONE_NOT_KEPT = 'What a phone hears by itself, without the server, is never kept.';

/** In a record, beside the words. */
export const LISTEN = 'Listen';
export const listenLabel = (words: string): string => `Listen to: ${words}`;
export const NO_SOUND = 'There is no sound with this entry.';
export const SOUND_OVER = 'The sound is deleted: its days are over.';
export const SOUND_LOST = 'The sound is not on the server, or is not the one that was kept.';
