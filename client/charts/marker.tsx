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
import type { Seq } from '../../src/advice.ts';

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

export interface Picks {
  /** Shows an entry in the exchange. */
  onPick: (seq: Seq) => void;
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
