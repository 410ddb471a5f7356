/** In the menu of a seat: ten digits, read once, say how well this voice is heard. They are read in English, as all is that is said. */
export const OWN_VOICE = 'Your voice';
export const OWN_VOICE_OFFER =
  'If you are heard wrong: read ten digits in English, with a short pause after each. It takes fifteen seconds. Where they are heard badly, you are asked more often instead.';
export const OWN_VOICE_NOT_STORED =
  'Nothing of your voice is stored. What was learnt of it is gone when this page is closed.';
export const READ_DIGITS = 'Read ten digits';
export const DIGITS_READ = 'I have read them';
export const LISTENS = 'Listening to the ten digits';
export const VOICE_UNCLEAR =
  'These were not heard as ten digits. Read them again in this order, with a short pause after each, or go on without.';
export const HEARD_WELL = 'Your digits were heard well. Nothing changes.';
export const HEARD_BADLY =
  'Some of your digits were heard badly. Until this page is closed you are asked more often.';
export const FORGET_VOICE = 'Forget my voice';
