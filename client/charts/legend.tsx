import type { ComponentChildren } from 'preact';
import type { GainSetting, Sample } from '../../src/log/series.ts';
import { gainLabel } from './gain-label.ts';
import { Shape } from './marker.tsx';

interface LegendProps {
  gains: readonly GainSetting[];
  samples: readonly Sample[];
  children?: ComponentChildren;
}

/** The gain settings that occur in a chart, each with its shape, and the other marks it uses. */
export function Legend({ gains, samples, children }: LegendProps) {
  const used = new Set(samples.map(({ gain }) => gain));
  const struck = samples.some(({ retractedBy }) => retractedBy !== undefined);
  return (
    <ul class="legend">
      {[...used]
        .sort((a, b) => a - b)
        .map((index) => (
          <li key={index}>
            <Swatch>
              <Shape gain={index} />
            </Swatch>
            {gainLabel(gains, index)}
          </li>
        ))}
      {struck && (
        <li>
          <Swatch>
            <path class="strike" d="M-8,8L8,-8" />
          </Swatch>
          taken back or corrected
        </li>
      )}
      {children}
    </ul>
  );
}

export function Swatch({ children }: { children: ComponentChildren }) {
  return (
    <svg class="swatch" width={20} height={20} viewBox="-10 -10 20 20" aria-hidden="true">
      {children}
    </svg>
  );
}
