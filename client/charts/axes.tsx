import { valueText } from '../../src/phrases/readings.ts';
import type { MeterProfile } from '../../src/profile.ts';
import type { Levels } from './levels.ts';

/** Room around the plot, pixels: the scale's numbers at the left, the axis with its title below. */
export const MARGIN = { left: 58, right: 14, bottom: 50 } as const;

/** The upright axis with its unit, and the strips for readings without a number. */
export function LevelAxis(props: {
  levels: Levels;
  meter: MeterProfile;
  width: number;
  height: number;
  /** Where the axis title stands above the plot, pixels, upwards negative. */
  titleY: number;
}) {
  const { levels, meter, width, height, titleY } = props;
  const { scale, saturated, none } = levels;
  const [bottom = height, top = 0] = scale.range();
  return (
    <g class="scale">
      {scale.ticks(5).map((tick) => (
        <g key={tick} transform={`translate(0,${scale(tick)})`}>
          <line class="grid" x2={width} />
          <text x={-8} dy="0.32em" text-anchor="end">
            {valueText(tick, meter)}
          </text>
        </g>
      ))}
      <path class="frame" d={`M0,0V${height}H${width}`} />
      {saturated !== undefined && <Strip y={top} at={saturated} label="saturated" width={width} />}
      {none !== undefined && <Strip y={bottom} at={none} label="no signal" width={width} />}
      <text class="title" x={-MARGIN.left + 2} y={titleY}>
        Reading, {meter.unit}
      </text>
    </g>
  );
}

function Strip({ y, at, label, width }: { y: number; at: number; label: string; width: number }) {
  return (
    <g>
      <line class="edge" y1={y} x2={width} y2={y} />
      <text class="small" x={-4} y={at} dy="0.32em" text-anchor="end">
        {label}
      </text>
    </g>
  );
}

/** The level axis: marks at pixel positions, and a title. */
export function BaseAxis(props: {
  ticks: readonly { x: number; label: string }[];
  title: string;
  width: number;
  height: number;
}) {
  const { ticks, title, width, height } = props;
  return (
    <g class="scale" transform={`translate(0,${height})`}>
      {ticks.map(({ x, label }) => (
        <g key={x} transform={`translate(${x},0)`}>
          <line y2={5} />
          <text y={24} text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      <text class="title" x={width} y={44} text-anchor="end">
        {title}
      </text>
    </g>
  );
}
