import type * as z from 'zod/mini';
import type { Cell } from '../formats/csv.ts';
import { AdjusterProfile, GainKind, MeterLaw, MeterProfile } from '../model/profile.ts';
import { EIGHTHS_PER_TURN } from '../model/turns.ts';
import { numberIn } from './number-in.ts';

type Profile = MeterProfile | AdjusterProfile;

/** A figure of a profile in a column of its own. */
interface Figure<P extends Profile> {
  readonly field: keyof P & string;
  /** Undefined: not what such a cell can hold. */
  readonly read: (text: string) => unknown;
  readonly write: (value: number | string) => Cell;
  /** What it can hold, where that is a list. */
  readonly choices?: readonly string[];
  /** The profile may lack it. */
  readonly optional?: boolean;
}

const asIs = (value: number | string): Cell => value;
const number = <P extends Profile>(field: keyof P & string): Figure<P> => ({
  field,
  read: numberIn,
  write: asIs,
});
/** The column's unit is `scale` of the profile's: a second is 1000 milliseconds. */
const scaled = <P extends Profile>(field: keyof P & string, scale: number): Figure<P> => ({
  field,
  read: (text) => {
    const value = numberIn(text);
    // The column holds as many figures as the profile: what is beyond them is the error of the division.
    return value === undefined ? undefined : Number((value * scale).toPrecision(15));
  },
  write: (value) => Number(value) / scale,
});
const choice = <P extends Profile>(field: keyof P & string, choices: readonly string[]): Figure<P> => ({
  field,
  read: (text) => choices.find((each) => each === text.toLowerCase()),
  write: asIs,
  choices,
});

/** How the profiles of a pair stand in a table: the name in a column of its own, then every figure. */
export const METER_FIGURES = {
  meter_unit: { field: 'unit', read: (text: string) => text, write: asIs, optional: true },
  meter_min: number('min'),
  meter_max: number('max'),
  meter_resolution: number('resolution'),
  meter_law: choice('law', MeterLaw.options),
  meter_db_per_unit: { ...number('dbPerUnit'), optional: true },
  meter_lost_at: number('lostAt'),
  meter_band_low: number('bandLow'),
  meter_band_high: number('bandHigh'),
  meter_saturated_at: number('saturatedAt'),
  meter_tolerance: number('tolerance'),
  meter_settle_s: scaled('settleMs', 1000),
  meter_hold_s: scaled('holdMs', 1000),
  meter_gain: choice('gain', GainKind.options),
  meter_gain_db_per_step: { ...number('gainDbPerStep'), optional: true },
} as const satisfies Record<string, Figure<MeterProfile>>;

export const ADJUSTER_FIGURES = {
  adjusters_max_step_turns: scaled('maxStep', EIGHTHS_PER_TURN),
  adjusters_backlash_turns: scaled('backlash', EIGHTHS_PER_TURN),
  adjusters_degrees_per_turn: { ...number('degreesPerTurn'), optional: true },
  adjusters_travel_turns: scaled('travel', EIGHTHS_PER_TURN),
} as const satisfies Record<string, Figure<AdjusterProfile>>;

export type ProfileColumn =
  | 'meter'
  | 'adjusters'
  | keyof typeof METER_FIGURES
  | keyof typeof ADJUSTER_FIGURES;

/** One of the two profiles of a pair, with its columns. */
export interface ProfileShape<P extends Profile> {
  readonly name: 'meter' | 'adjusters';
  readonly figures: Readonly<Record<string, Figure<P>>>;
  readonly schema: z.ZodMiniType<P>;
}
export const METER: ProfileShape<MeterProfile> = {
  name: 'meter',
  figures: METER_FIGURES,
  schema: MeterProfile,
};
export const ADJUSTERS: ProfileShape<AdjusterProfile> = {
  name: 'adjusters',
  figures: ADJUSTER_FIGURES,
  schema: AdjusterProfile,
};

/** The value of a profile in a column of its shape. */
export function profileCell<P extends Profile>(
  profile: P | undefined,
  { name, figures }: ProfileShape<P>,
  column: string,
): Cell {
  if (!profile) return undefined;
  if (column === name) return profile.name;
  const figure = figures[column];
  const value = figure && profile[figure.field];
  return value === undefined || value === '' ? undefined : figure?.write(value as number | string);
}
