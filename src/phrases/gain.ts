import type { GainSetting } from '../log/series.ts';

const CHANGE: Record<GainSetting['change'], string> = {
  'as-found': 'as found',
  full: 'full',
  lowered: 'lowered',
  raised: 'raised',
  set: 'changed',
};

/** "lowered", "changed to 40": how a setting was reached. */
export const gainChange = (setting: GainSetting): string =>
  'to' in setting && setting.to !== undefined
    ? `${CHANGE[setting.change]} to ${setting.to}`
    : CHANGE[setting.change];

/** "gain 2, lowered": settings are numbered in order, from 1. */
export function gainLabel(gains: readonly GainSetting[], index: number): string {
  const setting = gains[index];
  return setting ? `gain ${index + 1}, ${gainChange(setting)}` : `gain ${index + 1}`;
}
