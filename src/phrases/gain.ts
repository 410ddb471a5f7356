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

/** "gain change 2: lowered": the changes are counted, not the setting, which may not be known. */
export function gainLabel(gains: readonly GainSetting[], index: number): string {
  const setting = gains[index];
  if (index === 0) return `gain ${CHANGE['as-found']}`;
  return setting ? `gain change ${index}: ${gainChange(setting)}` : `gain change ${index}`;
}
