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
  /** It is outside its limits. This never blocks the work: local code and the maker decide. */
  readonly warns: boolean;
}

const figure = (
  id: FigureId,
  value: number,
  unit: string,
  limits: { least?: number | undefined; most?: number | undefined; by?: string } = {},
): PlanFigure => {
  const { least, most, by } = limits;
  return {
    id,
    value,
    unit,
    ...(least !== undefined && { least }),
    ...(most !== undefined && { most }),
    ...((least !== undefined || most !== undefined) && by !== undefined && { by }),
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

/** The same for a job, from its setup. */
export function checkSetup(
  { plan, meter, adjusters, pathLength, pair }: JobSetup,
  guidance?: Guidance,
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

function siting(plan: PairPlan, guidance: Guidance | undefined): PlanFigure[] {
  const { spacing, wallDistance, emitterHeight, receiverHeight, ceilingHeight } = plan;
  const by = guidance?.source ?? '';
  const belowCeiling = (id: FigureId, height: number | undefined): PlanFigure[] =>
    ceilingHeight === undefined || height === undefined
      ? []
      : [
          figure(id, ceilingHeight - height, 'm', {
            least: guidance?.ceilingLeast ?? 0,
            most: guidance?.ceilingMost,
            by,
          }),
        ];
  return [
    ...(spacing === undefined ? [] : [figure('reach', spacing / 2, 'm', { most: guidance?.reach, by })]),
    ...(wallDistance === undefined
      ? []
      : [
          figure('wall-distance', wallDistance, 'm', {
            least: guidance?.wallLeast,
            most: guidance?.wallMost,
            by,
          }),
        ]),
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
