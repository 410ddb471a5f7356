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

/** Gain settings differ by shape, never by colour; after the last shape, the first one again. */
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

/** The outline of a gain setting's mark, around the origin. */
export function shapeOf(gain: number): { d: string; hollow: boolean } {
  const { type, hollow } = SHAPES[gain % SHAPES.length] as (typeof SHAPES)[number];
  return { d: symbol(type, SIZE)() ?? '', hollow };
}
