import { historyScene } from '../../src/charts/history-scene.ts';
import { FIRST_VISIT, gainAtText, HISTORY_COLUMNS, lostText } from '../../src/phrases/history.ts';
import { valueText } from '../../src/phrases/readings.ts';
import type { PairRow } from '../../src/protocol/site.ts';
import { day, OWN_TIMES } from '../browser/times.ts';
import { Chart } from '../charts/chart.tsx';
import '../charts/charts.css';

/** The signal that each visit left the pair with, against the limits of its plan, drawn and in figures. */
export function SignalHistory({ row: { plan, signals } }: { row: PairRow }) {
  if (!signals) return null;
  const { meter, points } = signals;
  return (
    <div class="signal-history">
      <Chart
        draw={(width) => historyScene(signals, plan, OWN_TIMES, width)}
        firstWidth={420}
        empty="All visits were at one time."
      />
      <table>
        <thead>
          <tr>
            {Object.values(HISTORY_COLUMNS).map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {points.map(({ job, at, value, gain, lost }, index) => (
            <tr key={job}>
              <td>{day(at)}</td>
              <td>
                {valueText(value, meter)} {meter.unit}
              </td>
              <td>{gainAtText(gain)}</td>
              <td>{index === 0 ? FIRST_VISIT : lostText(lost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
