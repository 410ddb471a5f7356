import {
  type SymbolType,
  symbol,
  symbolCircle,
  symbolDiamond,
  symbolPlus,
  symbolSquare,
  symbolTimes,
  symbolTriangle,
} from 'd3-shape';
import type { ComponentChildren } from 'preact';
import type { Seq } from '../../src/advice.ts';
import type { GainSetting, Sample } from '../../src/log/series.ts';

/** Told apart by shape, never by colour; after the last, from the start again. */
const SHAPES: readonly { type: SymbolType; hollow: boolean }[] = [
  { type: symbolCircle, hollow: false },
  { type: symbolSquare, hollow: true },
  { type: symbolTriangle, hollow: false },
  { type: symbolDiamond, hollow: true },
  { type: symbolSquare, hollow: false },
  { type: symbolCircle, hollow: true },
  { type: symbolDiamond, hollow: false },
  { type: symbolTriangle, hollow: true },
  { type: symbolPlus, hollow: true },
  { type: symbolTimes, hollow: true },
];
/** Area, square pixels. */
const SIZE = 56;

export function Shape({ gain }: { gain: number }) {
  const { type, hollow } = SHAPES[gain % SHAPES.length] as (typeof SHAPES)[number];
  return <path class={hollow ? 'marker hollow' : 'marker'} d={symbol(type, SIZE)() ?? ''} />;
}

interface MarkerProps {
  x: number;
  y: number;
  gain: number;
  label: string;
  retracted: boolean;
  /** Side the adjuster was turned from: +1 clockwise, so from the left; 0 draws none. */
  cameBy?: number;
  onPick: () => void;
}

/** One reading. Its label is its tooltip; picking it leads to its entry. */
export function Marker({ x, y, gain, label, retracted, cameBy = 0, onPick }: MarkerProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') onPick();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: there is no button inside a drawing
    <g
      class={retracted ? 'sample retracted' : 'sample'}
      transform={`translate(${x},${y})`}
      role="button"
      tabIndex={0}
      aria-label={label}
      onClick={onPick}
      onKeyDown={onKeyDown}
    >
      <title>{label}</title>
      <circle class="target" r={12} />
      {cameBy !== 0 && <path class="tail" d={`M${-4 * cameBy},0H${-13 * cameBy}`} />}
      <Shape gain={gain} />
      {retracted && <path class="strike" d="M-8,8L8,-8" />}
    </g>
  );
}

const CHANGE: Record<GainSetting['change'], string> = {
  'as-found': 'as found',
  full: 'full',
  lowered: 'lowered',
  raised: 'raised',
  set: 'changed',
};

/** "gain 2, lowered": settings are numbered as they came, from 1. */
export function gainLabel(gains: readonly GainSetting[], index: number): string {
  const setting = gains[index];
  if (!setting) return `gain ${index + 1}`;
  const to = 'to' in setting && setting.to !== undefined ? ` to ${setting.to}` : '';
  return `gain ${index + 1}, ${CHANGE[setting.change]}${to}`;
}

export interface Picks {
  onPick: (seq: Seq) => void;
}

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
