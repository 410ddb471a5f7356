import type { Along } from '../../src/charts/along.ts';
import { turnsScene } from '../../src/charts/turns-scene.ts';
import type { Series } from '../../src/log/series.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import type { Axis } from '../../src/model/turns.ts';
import { Chart } from './chart.tsx';
import type { Picks } from './marker.tsx';

type Props = {
  series: Series;
  /** Of this adjuster, at the same moment. */
  along: Along;
  axis: Axis;
  meter: MeterProfile;
} & Picks;

/** Readings over the turns of one adjuster, since the emitter was last aimed by eye. */
export function TurnsChart({ series, along, axis, meter, onPick }: Props) {
  const left = series.sweeps
    .filter((sweep) => sweep.axis === axis && sweep.aim !== series.aim)
    .reduce((sum, { samples }) => sum + samples.length, 0);
  return (
    <Chart
      draw={(width) => turnsScene(series, along, axis, meter, width)}
      firstWidth={560}
      empty={`No readings while this adjuster was turned${series.aim > 0 ? ' since the last aim by eye' : ''}.`}
      note={left > 0 ? `${left} readings from before the last aim by eye are not shown.` : undefined}
      onPick={onPick}
    />
  );
}
