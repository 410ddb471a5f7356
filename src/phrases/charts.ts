import type { MeterProfile } from '../model/profile.ts';
import type { Axis } from '../model/turns.ts';

/** Headings, marks and keys of the charts. */
export const TIME_TITLE = 'Reading against time';
export const timeChartName = (readings: number): string => `${readings} readings against time`;
export const timeAxisTitle = (day: string, zone: string): string => `Time, ${day}, ${zone}`;

const ADJUSTER: Record<Axis, string> = { horizontal: 'Horizontal adjuster', vertical: 'Vertical adjuster' };
export const turnsTitle = (axis: Axis): string => `${ADJUSTER[axis]}: reading against turns`;
export const turnsChartName = (axis: Axis, readings: number): string =>
  `${ADJUSTER[axis]}: ${readings} readings against turns`;
/** Beside a small chart. `estimate`: "+0.68 ± 0.05 turns". */
export const peakThought = (axis: Axis, estimate: string): string =>
  `${axis === 'horizontal' ? 'Horizontal' : 'Vertical'} peak: ${estimate}`;
export const PEAK_UNKNOWN = 'Peak not known yet';
/** `aimed`: whether the emitter was aimed by eye since the start. */
export const turnsAxisTitle = (aimed: boolean): string =>
  `Turns from ${aimed ? 'the last aim by eye' : 'the start'}, clockwise +`;

export const readingAxisTitle = ({ unit }: MeterProfile): string => `Reading, ${unit}`;
export const highestText = (reading: string): string => `highest ${reading}`;

/** One reading in words; `where`: a time or a position. */
export const sampleText = (reading: string, where: string, gain: string, seq: number): string =>
  `${reading} at ${where}, ${gain}, entry ${seq}`;

export const bandKey = ({ bandLow, bandHigh, unit }: MeterProfile): string =>
  `band ${bandLow} to ${bandHigh} ${unit}`;

/** What the marks of a chart stand for. */
export const KEYS = {
  struck: 'taken back or corrected',
  stretch: 'hold, pause or covered beam',
  timeLeftOut: 'time left out, nothing happened',
  likely: 'fitted beam, 95 % within the shade',
  tail: 'tail: side it was turned from',
  left: 'where it was left',
  earlier: 'earlier, with the other adjuster elsewhere',
} as const;

export const STRETCH_LABELS = { blocked: 'covered', partial: 'part covered', pause: 'pause' } as const;

export const MOMENT_LABELS = {
  're-aimed': 'aimed by eye',
  disturbed: 'moved uncounted',
  accepted: 'accepted',
  overridden: 'accepted by override',
  signed: 'signed',
  stopped: 'stopped',
  restarted: 'restarted',
} as const;
export const panelMoment = (shows: string | undefined): string => `panel: ${shows}`;

export const leftAt = (position: string): string => `Left at ${position}.`;

interface Highest {
  reading: string;
  position: string;
  gain: string;
  /** Positions read on each side of it. */
  below: number;
  above: number;
  /** The fitted peak, where there is one. */
  fitted: string | undefined;
}

/** "Highest 142 at +¼, gain 1, as found; read at 2 positions below it and 3 above. Fitted peak at …" */
export function highestCaption({ reading, position, gain, below, above, fitted }: Highest): string {
  const places = `${below} ${below === 1 ? 'position' : 'positions'}`;
  const fit = fitted === undefined ? '' : ` Fitted peak at ${fitted}.`;
  return `Highest ${reading} at ${position}, ${gain}; read at ${places} below it and ${above} above.${fit}`;
}
