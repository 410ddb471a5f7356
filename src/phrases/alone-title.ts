/** On the first page, which loads nothing else of it. */
export const ALONE_TITLE = 'I am alone';
export const ALONE_ON_HOME = 'You do both. A second phone reads the meter, or you walk to it.';
