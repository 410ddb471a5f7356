import type { PairPlan } from '../model/pair-plan.ts';
import type { Fact } from './report.ts';

/** What was planned for a pair, as far as it is known, in two lines. */
export function planRows(plan: PairPlan): Fact[] {
  const some = (value: number | string | undefined, text: (value: number | string) => string): string[] =>
    value === undefined ? [] : [text(value)];
  const { alarmThreshold: threshold } = plan;
  const place = [
    ...some(plan.zone, (zone) => `zone ${zone}`),
    ...some(plan.pathLength, (length) => `path ${length} m`),
    ...some(plan.emitterHeight, (height) => `emitter at ${height} m`),
    ...some(plan.receiverHeight, (height) => `receiver at ${height} m`),
    ...some(plan.ceilingHeight, (height) => `ceiling at ${height} m`),
  ];
  const settings = [
    ...(threshold ? [`alarm at ${threshold.value} ${threshold.unit === 'dB' ? 'dB' : '%'} lost`] : []),
    ...some(plan.alarmDelay, (delay) => `alarm delay ${delay} s`),
    ...some(plan.faultDelay, (delay) => `fault delay ${delay} s`),
    ...(plan.filters
      ? [`test filters ${plan.filters.join(', ')} %`]
      : some(plan.filterPercent, (grade) => `test filter ${grade} %`)),
  ];
  return [
    { name: 'Place', value: place.join(', ') || 'not stated' },
    { name: 'Settings', value: settings.join(', ') || 'not stated' },
  ];
}
