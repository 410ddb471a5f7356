/** The numbers that a meter shows: from one on, in steps. */
export interface Steps {
  readonly from: number;
  readonly by: number;
}

export const stepsOf = ({ min, resolution }: { min: number; resolution: number }): Steps => ({
  from: min,
  by: resolution,
});

/** Digits after the decimal point that a meter with such steps shows. */
export const decimalsOf = ({ by }: Pick<Steps, 'by'>): number =>
  Math.max(0, Math.min(4, Math.ceil(-Math.log10(by) - 1e-9)));

/** On a step, or with no more figures than are shown. */
export function isShown(value: number, { from, by }: Steps): boolean {
  const steps = (value - from) / by;
  const shown = Number(value.toFixed(decimalsOf({ by })));
  return Math.abs(steps - Math.round(steps)) < 1e-6 || Math.abs(shown - value) < 1e-9;
}
