import { smallTurnsScene } from '../../src/charts/small-turns-scene.ts';
import type { Search } from '../../src/engine/search.ts';
import type { Series } from '../../src/log/series.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import type { Axis } from '../../src/model/turns.ts';
import { Drawing } from './scene.tsx';

/** CSS pixels. */
const SIZE = { width: 160, height: 64 };

interface Props {
  series: Series;
  /** The search at the same moment: it has the fit. */
  search: Search | undefined;
  axis: Axis;
  meter: MeterProfile;
}

/** `TurnsChart` without figures, and its result in words. */
export function SmallTurnsChart({ series, search, axis, meter }: Props) {
  const { words, scene } = smallTurnsScene(series, search, axis, meter, SIZE);
  return (
    <>
      <span class="peak-words">{words}</span>
      {/* The words say it, and the large chart has names. */}
      <span class="chart" aria-hidden="true">
        <Drawing scene={scene} />
      </span>
    </>
  );
}
