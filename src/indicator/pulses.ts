/** A level at a time, ms. */
export interface Level {
  readonly at: number;
  readonly db: number;
}

/** Between on and off there is more than this, dB: less is a tone or a lamp that is simply there. Our own figure, no source. */
const ON_OFF_DB = 6;
/** On above, off below these shares of the way from the quietest to the loudest: so that noise at the middle counts no pulse twice. */
const ON = 0.6;
const OFF = 0.4;
/** The loudest and quietest tenths are left out: one click is no level. */
const LEFT_OUT = 0.1;

/**
 * How often it goes on in a second: 0 where it stays on, or off; undefined where it goes on too seldom to say. What is counted are
 * whole periods, from one going on to the last.
 */
export function pulseRate(levels: readonly Level[]): number | undefined {
  const sorted = levels.map(({ db }) => db).sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
  const [low, high] = [at(LEFT_OUT), at(1 - LEFT_OUT)];
  if (levels.length === 0) return undefined;
  if (high - low < ON_OFF_DB) return 0;
  const starts: number[] = [];
  let isOn: boolean | undefined;
  for (const level of levels) {
    const place = (level.db - low) / (high - low);
    if (place > ON && isOn !== true) {
      if (isOn === false) starts.push(level.at);
      isOn = true;
    } else if (place < OFF) isOn = false;
  }
  const [first, last] = [starts[0], starts.at(-1)];
  if (first === undefined || last === undefined || starts.length < 3) return undefined;
  return (1000 * (starts.length - 1)) / (last - first);
}
