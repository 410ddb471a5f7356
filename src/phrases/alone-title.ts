/** On the first page, which loads nothing else of it. */
export const ALONE_TITLE = 'I am alone';
export const ALONE_ON_HOME =
  'You do both: with a second phone by the panel, by walking to it, or by an indicator that you see from the ladder.';
