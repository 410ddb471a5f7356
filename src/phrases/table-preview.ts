import { MAX_PAIRS } from '../model/pair-plan.ts';

/** `value`: as the table has it. */
const shown = (value: string | number | undefined): string => (value === undefined ? 'nothing' : `${value}`);

/** "62 → 64.5", "nothing → 10", "35 → nothing". */
export const changeText = (from: string | number | undefined, to: string | number | undefined): string =>
  `${shown(from)} → ${shown(to)}`;

export const emptyCellsText = (cells: number, clears: boolean): string => {
  const are = cells === 1 ? 'One cell is' : `${cells} cells are`;
  const what = clears ? 'This is taken away' : 'It stays as it is';
  return `${are} empty where the plan has something. ${what}.`;
};

export const overLimitText = (together: number): string =>
  `With this table the site would have ${together} pairs. A site has at most ${MAX_PAIRS}, removed ones too. Take rows out, or open another site for them.`;
