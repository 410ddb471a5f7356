import { MAX_PAIRS } from '../model/pair-plan.ts';
import type { LengthUnit } from '../model/units.ts';
import { lengthText } from './units.ts';

type Value = string | number | undefined;

/** "62 → 64.5", "nothing → 10", "35 → nothing". `length`: the unit, where the values are lengths in metres. */
export function changeText(from: Value, to: Value, length?: LengthUnit): string {
  const shown = (value: Value): string => {
    if (value === undefined) return 'nothing';
    return length && typeof value === 'number' ? lengthText(value, { length }) : `${value}`;
  };
  return `${shown(from)} → ${shown(to)}`;
}

export const emptyCellsText = (cells: number, clears: boolean): string => {
  const are = cells === 1 ? 'One cell is' : `${cells} cells are`;
  const what = clears ? 'This is taken away' : 'It stays as it is';
  return `${are} empty where the plan has something. ${what}.`;
};

export const overLimitText = (together: number): string =>
  `With this table the site would have ${together} pairs. A site has at most ${MAX_PAIRS}, removed ones too. Take rows out, or open another site for them.`;
