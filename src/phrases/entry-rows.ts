import type { Line } from './describe.ts';

/** The words of the report's table of the entries that it names. */
export const ENTRY_COLUMNS = {
  entry: 'Entry',
  time: 'Time',
  by: 'By',
  text: 'What it says',
  namedIn: 'Named in',
} as const;

export const WHO: Readonly<Record<Line['who'], string>> = {
  panel: 'Panel',
  emitter: 'Emitter',
  ladderline: 'Ladderline',
};
