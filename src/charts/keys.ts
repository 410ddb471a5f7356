import type { GainSetting, Sample } from '../log/series.ts';
import { KEYS } from '../phrases/charts.ts';
import { gainLabel } from '../phrases/gain.ts';
import { type Key, line } from './scene.ts';

/** The gain settings among the readings, each with its mark, and the meaning of a struck mark. */
export function sampleKeys(samples: readonly Sample[], gains: readonly GainSetting[]): Key[] {
  const used = [...new Set(samples.map(({ gain }) => gain))].sort((a, b) => a - b);
  const struck = samples.some(({ retractedBy }) => retractedBy !== undefined);
  const marks = used.map(
    (gain): Key => ({
      parts: [{ kind: 'sample', seq: 0, x: 0, y: 0, gain, retracted: false, cameBy: 0, label: '' }],
      text: gainLabel(gains, gain),
    }),
  );
  return struck ? [...marks, { parts: [line('strike', 'M-8,8L8,-8')], text: KEYS.struck }] : marks;
}
