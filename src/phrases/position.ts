import { EIGHTHS_PER_TURN, type Eighths } from '../model/turns.ts';
import { amountGlyph } from './amounts.ts';

/** "+¼", "−1½", "0": the position of an adjuster, clockwise positive. */
export const positionText = (eighths: Eighths): string =>
  eighths === 0 ? '0' : `${eighths > 0 ? '+' : '−'}${amountGlyph(eighths)}`;

/** "+0.68 ± 0.05 turns": an estimated position with twice its standard deviation, given in eighths. */
export function estimateText({ value, sd }: { value: number; sd: number }): string {
  const turns = value / EIGHTHS_PER_TURN;
  const sign = turns < 0 ? '−' : '+';
  return `${sign}${Math.abs(turns).toFixed(2)} ± ${((2 * sd) / EIGHTHS_PER_TURN).toFixed(2)} turns`;
}
