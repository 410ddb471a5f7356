import type { Seq } from '../model/ids.ts';

/** What a line means; every rendering has one stroke for each. */
export type LineStyle =
  | 'grid'
  | 'frame'
  | 'edge'
  | 'run'
  | 'earlier'
  | 'rule'
  | 'strong'
  | 'leader'
  | 'usable'
  | 'peak'
  | 'fit'
  | 'tail'
  | 'strike';
/** What an area means. */
export type AreaStyle = 'stretch' | 'likely' | 'end' | 'sure';
export type TextStyle = 'label' | 'title' | 'small';
export type Anchor = 'start' | 'middle' | 'end';

/** One reading, drawn as the mark of its gain setting. */
export interface SamplePart {
  readonly kind: 'sample';
  readonly seq: Seq;
  readonly x: number;
  readonly y: number;
  readonly gain: number;
  readonly retracted: boolean;
  /** The side the adjuster was turned from: +1 clockwise, so from the left; 0 draws nothing. */
  readonly cameBy: number;
  /** What it is, in words. */
  readonly label: string;
}

export type Part =
  /** `d`: SVG path data. */
  | { readonly kind: 'line'; readonly style: LineStyle; readonly d: string }
  | { readonly kind: 'area'; readonly style: AreaStyle; readonly d: string }
  | {
      readonly kind: 'text';
      readonly style: TextStyle;
      readonly x: number;
      /** Of the baseline. */
      readonly y: number;
      readonly text: string;
      readonly anchor: Anchor;
    }
  | SamplePart;

/** A mark of the chart explained; `parts` around the origin, in a box of 20 by 20. */
export interface Key {
  readonly parts: readonly Part[];
  readonly text: string;
}

/** A chart as it is drawn, in pixels from its upper left corner; the same on screen and on paper. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  /** What it shows, for people who cannot see it. */
  readonly name: string;
  readonly parts: readonly Part[];
  readonly keys: readonly Key[];
}

export const line = (style: LineStyle, d: string): Part => ({ kind: 'line', style, d });
export const area = (style: AreaStyle, d: string): Part => ({ kind: 'area', style, d });
export const text = (style: TextStyle, x: number, y: number, words: string, anchor: Anchor): Part => ({
  kind: 'text',
  style,
  x,
  y,
  text: words,
  anchor,
});
export const box = (style: AreaStyle, x: number, y: number, width: number, height: number): Part =>
  area(style, `M${x},${y}h${width}v${height}h${-width}Z`);
