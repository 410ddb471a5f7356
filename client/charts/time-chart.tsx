import { timeScene } from '../../src/charts/time-scene.ts';
import type { Series } from '../../src/log/series.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { OWN_TIMES } from '../browser/times.ts';
import { inOwnWords } from '../language/languages.ts';
import { Chart } from './chart.tsx';
import type { Picks } from './marker.tsx';

type Props = {
  series: Series;
  /** The series of the whole log. It sets the time axis, which must not grow in a replay. */
  whole: Series;
  meter: MeterProfile;
} & Picks;

/** Readings over time, with everything that affects them. */
export const TimeChart = ({ series, whole, meter, onPick }: Props) => (
  <Chart
    draw={(width) => timeScene(series, whole, meter, OWN_TIMES, width, { said: inOwnWords })}
    firstWidth={900}
    empty="No readings yet."
    onPick={onPick}
  />
);
