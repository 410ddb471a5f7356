import {
  type AdjusterProfile,
  type MeterProfile,
  NEUTRAL_ADJUSTERS,
  NEUTRAL_METERS,
} from '../../src/model/profile.ts';
import { rangeOf } from '../../src/model/range.ts';
import { JobSetup } from '../../src/model/setup.ts';
import { METRES, type Units } from '../../src/model/units.ts';
import { lengthLike, lengthRangeText, NO_NUMBER, setupFaultText } from '../../src/phrases/form-faults.ts';
import type { ADJUSTER_LABELS, METER_LABELS } from '../../src/phrases/profiles.ts';
import { readLength } from '../../src/plan/lengths.ts';

/** The start form as it is typed: everything as text, times in seconds. */
export interface Draft {
  site: string;
  pair: string;
  /** A length in `units`, or with a unit of its own. */
  pathLength: string;
  units: Units;
  meter: MeterDraft;
  adjusters: AdjusterDraft;
}

export type MeterDraft = Record<keyof typeof METER_LABELS, string>;
export type AdjusterDraft = Record<keyof typeof ADJUSTER_LABELS, string>;

export const meterDraft = (m: MeterProfile): MeterDraft => ({
  name: m.name,
  unit: m.unit,
  min: String(m.min),
  max: String(m.max),
  resolution: String(m.resolution),
  law: m.law,
  dbPerUnit: m.dbPerUnit === undefined ? '' : String(m.dbPerUnit),
  lostAt: String(m.lostAt),
  bandLow: String(m.bandLow),
  bandHigh: String(m.bandHigh),
  saturatedAt: String(m.saturatedAt),
  tolerance: String(m.tolerance),
  settle: String(m.settleMs / 1000),
  hold: String(m.holdMs / 1000),
  gain: m.gain,
  gainDbPerStep: m.gainDbPerStep === undefined ? '' : String(m.gainDbPerStep),
});

/** Turns in the form, eighths inside. */
const EIGHTHS = 8;

export const adjusterDraft = (a: AdjusterProfile): AdjusterDraft => ({
  name: a.name,
  maxStep: String(a.maxStep / EIGHTHS),
  backlash: String(a.backlash / EIGHTHS),
  degreesPerTurn: a.degreesPerTurn === undefined ? '' : String(a.degreesPerTurn),
  travel: String(a.travel / EIGHTHS),
});

export const newDraft = (
  meter: MeterProfile = NEUTRAL_METERS[0] as MeterProfile,
  units: Units = METRES,
): Draft => ({
  site: '',
  pair: '',
  pathLength: '',
  units,
  meter: meterDraft(meter),
  adjusters: adjusterDraft(NEUTRAL_ADJUSTERS),
});

/** By the path of the field: "site", "meter.bandLow". */
export type Errors = Readonly<Record<string, string>>;

export type Parsed = { kind: 'ok'; setup: JobSetup } | { kind: 'wrong'; errors: Errors };

/** The setup that a filled form means, or what is wrong with it, field by field. */
export function parseDraft(draft: Draft): Parsed {
  const errors: Record<string, string> = {};
  const number = (path: string, text: string): number => {
    const value = Number(text.trim().replace(',', '.').replace('−', '-'));
    if (text.trim() !== '' && Number.isFinite(value)) return value;
    errors[path] = NO_NUMBER;
    return Number.NaN;
  };
  const optional = <K extends string>(key: K, path: string, text: string): { [P in K]?: number } =>
    text.trim() === '' ? {} : ({ [key]: number(path, text) } as { [P in K]: number });
  const { meter: m, adjusters: a } = draft;
  const inEighths = (path: string, text: string): number => number(path, text) * EIGHTHS;
  const candidate = {
    site: draft.site,
    pair: draft.pair,
    ...path(draft, errors),
    units: draft.units,
    meter: {
      name: m.name.trim(),
      unit: m.unit.trim(),
      min: number('meter.min', m.min),
      max: number('meter.max', m.max),
      resolution: number('meter.resolution', m.resolution),
      law: m.law,
      ...optional('dbPerUnit', 'meter.dbPerUnit', m.dbPerUnit),
      lostAt: number('meter.lostAt', m.lostAt),
      bandLow: number('meter.bandLow', m.bandLow),
      bandHigh: number('meter.bandHigh', m.bandHigh),
      saturatedAt: number('meter.saturatedAt', m.saturatedAt),
      tolerance: number('meter.tolerance', m.tolerance),
      settleMs: Math.round(number('meter.settle', m.settle) * 1000),
      holdMs: Math.round(number('meter.hold', m.hold) * 1000),
      gain: m.gain,
      ...optional('gainDbPerStep', 'meter.gainDbPerStep', m.gainDbPerStep),
    },
    adjusters: {
      name: a.name.trim(),
      maxStep: inEighths('adjusters.maxStep', a.maxStep),
      backlash: inEighths('adjusters.backlash', a.backlash),
      ...optional('degreesPerTurn', 'adjusters.degreesPerTurn', a.degreesPerTurn),
      travel: inEighths('adjusters.travel', a.travel),
    },
  };
  const parsed = JobSetup.safeParse(candidate);
  for (const issue of parsed.success ? [] : parsed.error.issues) {
    const path = issue.path.join('.').replace('settleMs', 'settle').replace('holdMs', 'hold');
    errors[path] ??= setupFaultText(path, issue);
  }
  return parsed.success && Object.keys(errors).length === 0
    ? { kind: 'ok', setup: parsed.data }
    : { kind: 'wrong', errors };
}

/** Emitter to receiver, if it was typed. */
function path(
  { pathLength: text, units: { length } }: Draft,
  errors: Record<string, string>,
): { pathLength?: number } {
  if (text.trim() === '') return {};
  const pathLength = readLength(text, length);
  if (pathLength === undefined) {
    errors.pathLength = lengthLike(length);
    return {};
  }
  const schema = JobSetup.shape.pathLength;
  if (!schema.safeParse(pathLength).success) errors.pathLength = lengthRangeText(...rangeOf(schema), length);
  return { pathLength };
}
