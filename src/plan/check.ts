import type { Guidance } from '../model/guidance.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { MeterProfile } from '../model/profile.ts';
import { midBand } from '../model/profile.ts';
import { type Reading, valueReading } from '../model/reading.ts';
import type { JobSetup } from '../model/setup.ts';
import { QUARTER, toTurns } from '../model/turns.ts';
import { percentOfDb } from './attenuation.ts';
import { alarmLoss, FILTER_MOST_PERCENT, kitOf, thresholdDb } from './covers.ts';
import { readingBehind } from './expected.ts';
import { angleOf, footprintOf, offsetOf, PRE_AIM_M } from './geometry.ts';

export const FIGURES = [
  'aiming-tolerance',
  'footprint',
  'quarter-turn',
  'path-length',
  'reach',
  'wall-distance',
  'ceiling-height',
  'emitter-ceiling',
  'receiver-ceiling',
  'level',
  'alarm-percent',
  'alarm-db',
  'alarm-delay',
  'fault-delay',
  'filter',
  'cover-loss',
  'expected-reading',
] as const;
export type FigureId = (typeof FIGURES)[number];

export type Side = 'least' | 'most';

/** One figure of the plan check. The words for its name, formula and source are in `src/phrases/plan.ts`. */
export interface PlanFigure {
  readonly id: FigureId;
  readonly value: number;
  /** "m", "degrees", "percent", "dB", or the meter's unit. */
  readonly unit: string;
  /** The limits it is checked against, in the same unit, and their source, where there are any. */
  readonly least?: number;
  readonly most?: number;
  readonly by?: string;
  /** Which of these limits are the guidance's. */
  readonly guided?: readonly Side[];
  /** It is outside its limits. This never blocks the work: local code and the maker decide. */
  readonly warns: boolean;
}

interface Limits {
  readonly least?: number | undefined;
  readonly most?: number | undefined;
  readonly by?: string;
  readonly guided?: readonly Side[];
}

const figure = (id: FigureId, value: number, unit: string, limits: Limits = {}): PlanFigure => {
  const { least, most, by, guided = [] } = limits;
  return {
    id,
    value,
    unit,
    ...(least !== undefined && { least }),
    ...(most !== undefined && { most }),
    ...((least !== undefined || most !== undefined) && by !== undefined && { by }),
    ...(guided.length > 0 && { guided }),
    // Figures are entered as decimals: a tiny binary rounding error must not warn.
    warns: (least !== undefined && value < least - 1e-9) || (most !== undefined && value > most + 1e-9),
  };
};

/**
 * Every figure that can be worked out from what is known of a pair, in the order of `FIGURES`. `final`: the
 * reading at the end of the alignment; before that, the middle of the meter's band is used.
 */
export function checkPlan(plan: PairPlan, guidance?: Guidance, final?: Reading): PlanFigure[] {
  return [...aiming(plan), ...siting(plan, guidance), ...light(plan, final)];
}

/** The same for a job, from its setup: with the profiles in use, and the guidance that it was opened with. */
export function checkSetup(
  { plan, meter, adjusters, pathLength, pair, guidance }: JobSetup,
  final?: Reading,
): PlanFigure[] {
  const known = plan ?? { id: 'pair', name: pair };
  const path = known.pathLength ?? pathLength;
  return checkPlan(
    { ...known, meter, adjusters, ...(path !== undefined && { pathLength: path }) },
    guidance,
    final,
  );
}

function aiming({ pathLength, beamAngle, adjusters, rangeMin, rangeMax }: PairPlan): PlanFigure[] {
  if (pathLength === undefined) return [];
  const pitch = adjusters?.degreesPerTurn;
  return [
    figure('aiming-tolerance', angleOf(PRE_AIM_M, pathLength), 'degrees'),
    ...(beamAngle === undefined ? [] : [figure('footprint', footprintOf(beamAngle, pathLength), 'm')]),
    ...(pitch === undefined
      ? []
      : [figure('quarter-turn', offsetOf(pitch * toTurns(QUARTER), pathLength), 'm')]),
    figure('path-length', pathLength, 'm', { least: rangeMin, most: rangeMax, by: 'the maker' }),
  ];
}

/** Of each figure, which limits a guidance may have for it. */
export const GUIDED = {
  reach: { most: reachIn },
  'wall-distance': { least: ({ wallLeast }) => wallLeast, most: ({ wallMost }) => wallMost },
  'ceiling-height': { most: ({ highest }) => highest },
  'emitter-ceiling': { least: ({ ceilingLeast }) => ceilingLeast, most: ({ ceilingMost }) => ceilingMost },
  'receiver-ceiling': { least: ({ ceilingLeast }) => ceilingLeast, most: ({ ceilingMost }) => ceilingMost },
} as const satisfies {
  readonly [id in FigureId]?: { readonly [side in Side]?: (guidance: Guidance) => number | undefined };
};
export type GuidedId = keyof typeof GUIDED;

/** The limit that a guidance has on one side of a figure, if it has one. */
export function limitIn(guidance: Guidance, id: GuidedId, side: Side): number | undefined {
  const rules: { readonly [side in Side]?: (guidance: Guidance) => number | undefined } = GUIDED[id];
  return rules[side]?.(guidance);
}

/** Half of what may lie between two beams is as far as one of them reaches. */
function reachIn({ reach, spacing }: Guidance): number | undefined {
  if (spacing === undefined) return reach;
  return Math.min(reach ?? Number.POSITIVE_INFINITY, spacing / 2);
}

/** The limits of the guidance, and what else is common where it has none. */
function limitsOf(
  id: GuidedId,
  guidance: Guidance | undefined,
  common: { readonly [side in Side]?: CommonLimit } = {},
): Limits {
  const limit = (side: Side) => {
    const of = guidance && limitIn(guidance, id, side);
    if (of !== undefined) return { value: of, by: guidance?.source || guidance?.name, guided: true };
    return common[side] && { ...common[side], guided: false };
  };
  const limits = { least: limit('least'), most: limit('most') };
  const [one, ...others] = SIDES.flatMap((side) => limits[side]?.by ?? []);
  const isOfOne = others.every((by) => by === one);
  const by = isOfOne ? one : SIDES.map((side) => `at ${side}: ${limits[side]?.by}`).join('; ');
  return {
    least: limits.least?.value,
    most: limits.most?.value,
    ...(by !== undefined && { by }),
    guided: SIDES.filter((side) => limits[side]?.guided),
  };
}

const SIDES = ['least', 'most'] as const satisfies readonly Side[];

interface CommonLimit {
  /** Metres. */
  readonly value: number;
  readonly by: string;
}

/**
 * Where no guidance says how far below the ceiling a beam may run: nearer it lies in air that smoke may not reach, lower
 * the smoke may be late.
 */
const COMMON_BELOW_CEILING = {
  least: { value: 0.025, by: 'common practice, no source' },
  most: { value: 1, by: 'common practice, no source' },
} as const;

/** Under a higher ceiling smoke may cool and spread before it reaches the beam. */
const COMMON_HIGHEST = {
  most: { value: 25, by: 'common practice; 25 m as in BS 5839-1, from memory' },
} as const;

function siting(plan: PairPlan, guidance: Guidance | undefined): PlanFigure[] {
  const { spacing, wallDistance, emitterHeight, receiverHeight, ceilingHeight } = plan;
  const belowCeiling = (id: 'emitter-ceiling' | 'receiver-ceiling', height: number | undefined) =>
    ceilingHeight === undefined || height === undefined
      ? []
      : [figure(id, ceilingHeight - height, 'm', limitsOf(id, guidance, COMMON_BELOW_CEILING))];
  return [
    ...(spacing === undefined ? [] : [figure('reach', spacing / 2, 'm', limitsOf('reach', guidance))]),
    ...(wallDistance === undefined
      ? []
      : [figure('wall-distance', wallDistance, 'm', limitsOf('wall-distance', guidance))]),
    ...(ceilingHeight === undefined
      ? []
      : [figure('ceiling-height', ceilingHeight, 'm', limitsOf('ceiling-height', guidance, COMMON_HIGHEST))]),
    ...belowCeiling('emitter-ceiling', emitterHeight),
    ...belowCeiling('receiver-ceiling', receiverHeight),
    ...(emitterHeight === undefined || receiverHeight === undefined
      ? []
      : [figure('level', Math.abs(emitterHeight - receiverHeight), 'm')]),
  ];
}

function light(plan: PairPlan, final: Reading | undefined): PlanFigure[] {
  const { meter, alarmDelay, faultDelay } = plan;
  const alarmDb = thresholdDb(plan);
  const strongest = kitOf(plan).at(-1);
  const { db, tolerance } = alarmLoss({ plan, meter });
  const delay = (id: FigureId, seconds: number | undefined): PlanFigure[] =>
    seconds === undefined
      ? []
      : [figure(id, seconds, 's', { least: DELAY_LEAST_S, by: 'common practice, no source' })];
  return [
    ...(alarmDb === undefined
      ? []
      : [
          figure('alarm-percent', percentOfDb(alarmDb), 'percent'),
          figure('alarm-db', alarmDb, 'dB', { ...RESPONSE_DB, by: 'EN 54-12:2002 5.2, from memory' }),
        ]),
    ...delay('alarm-delay', alarmDelay),
    ...delay('fault-delay', faultDelay),
    ...(strongest === undefined
      ? []
      : [
          figure('filter', strongest, 'percent', {
            most: FILTER_MOST_PERCENT,
            by: 'common practice, no source',
          }),
        ]),
    figure('cover-loss', db, 'dB', {
      least: alarmDb === undefined ? undefined : alarmDb + tolerance,
      by: 'the alarm threshold and the tolerance of the cover',
    }),
    ...expected(meter, final, db),
  ];
}

/** Without a delay a bird brings an alarm. Common practice, no source. */
const DELAY_LEAST_S = 1;

/**
 * A beam detector's response threshold lies between these, dB: EN 54-12:2002 5.2, reproducibility (clause and limits
 * from memory).
 */
const RESPONSE_DB = { least: 0.5, most: 6 };

function expected(meter: MeterProfile | undefined, final: Reading | undefined, loss: number): PlanFigure[] {
  if (!meter) return [];
  const behind = readingBehind(final ?? valueReading(midBand(meter)), loss, meter);
  if (!behind) return [];
  const value = behind.kind === 'value' ? behind.value : meter.lostAt;
  return [figure('expected-reading', value, meter.unit)];
}
