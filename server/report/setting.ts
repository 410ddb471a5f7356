import type { ReportPhoto } from '../../src/report/report.ts';
import type { Piece } from './flow.ts';
import type { Face } from './fonts.ts';
import { lineHeight, type Measure, SIZE } from './measure.ts';
import type { Tag, Words } from './pen.ts';

/** The column of paper that blocks stand in, points, and what their links need. */
export interface Setting {
  readonly measure: Measure;
  readonly x: number;
  readonly width: number;
  /** The part that the blocks belong to. */
  readonly part: string;
  /** Number of the page on which a part begins. */
  readonly pageOf: (part: string) => string;
  /** The picture of a photo, once the part is printed; undefined where it is not at hand. */
  readonly pictureOf: (photo: ReportPhoto) => Uint8Array | undefined;
  /** Called when a block's heading is printed. */
  readonly onHeading: (title: string, y: number) => void;
}

/** A text set in a box of this width. */
export const set = (
  { measure }: Pick<Setting, 'measure'>,
  text: string,
  x: number,
  width: number,
  size: number = SIZE.body,
  face: Face = 'plain',
): Words => ({ lines: measure.lines(text, face, size, width), x, face, size });

export const heightOf = ({ lines, size }: Words): number => lines.length * lineHeight(size);

/** One element as a piece. */
export const piece = (tag: Tag, words: Words, more: Partial<Piece> = {}): Piece => ({
  height: heightOf(words),
  draw: (pen, y) => pen.element(tag, words, y),
  ...more,
});
