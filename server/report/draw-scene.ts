import type { AreaStyle, Key, LineStyle, Part, SamplePart, Scene } from '../../src/charts/scene.ts';
import { shapeOf } from '../../src/charts/shapes.ts';

type Doc = PDFKit.PDFDocument;

interface Stroke {
  readonly width: number;
  readonly dash?: readonly number[];
  readonly grey?: number;
}

/** Lines differ in width and pattern, so that a copy in black and white loses nothing. */
const STROKES: Record<LineStyle, Stroke> = {
  grid: { width: 0.75, grey: 0.85 },
  frame: { width: 1 },
  edge: { width: 1, dash: [1, 3] },
  run: { width: 1.25 },
  earlier: { width: 1, dash: [4, 3] },
  rule: { width: 1, dash: [5, 3] },
  strong: { width: 3 },
  leader: { width: 0.75, grey: 0.7 },
  usable: { width: 1.5, dash: [2, 4] },
  peak: { width: 1, dash: [6, 4] },
  fit: { width: 2, dash: [1.5, 2.5] },
  tail: { width: 2 },
  strike: { width: 2 },
};
const GREYS: Record<AreaStyle, number> = { stretch: 0.88, likely: 0.84, end: 0, sure: 0.4 };
const SIZES = { label: 12, title: 12, small: 11 } as const;

const grey = (share: number): [number, number, number] => {
  const part = Math.round(share * 255);
  return [part, part, part];
};

/** Draws a scene with its upper left corner at (x, y), `scale` points a pixel: marks as paths, words as text. */
export function drawScene(doc: Doc, scene: Scene, x: number, y: number, scale: number): void {
  doc.save().translate(x, y).scale(scale);
  for (const part of scene.parts) drawPart(doc, part);
  doc.restore();
}

/** Draws a mark of the legend, 20 pixels wide, centred on (x, y). */
export function drawKey(doc: Doc, { parts }: Key, x: number, y: number, scale: number): void {
  doc.save().translate(x, y).scale(scale);
  for (const part of parts) drawPart(doc, part);
  doc.restore();
}

function drawPart(doc: Doc, part: Part): void {
  switch (part.kind) {
    case 'line':
      if (part.d !== '') stroke(doc, part.d, STROKES[part.style]);
      break;
    case 'area':
      if (part.d !== '') doc.path(part.d).fill(grey(GREYS[part.style]));
      break;
    case 'text': {
      doc
        .font(part.style === 'title' ? 'bold' : 'plain')
        .fontSize(SIZES[part.style])
        .fillColor('black');
      const width = doc.widthOfString(part.text);
      const left = part.anchor === 'start' ? 0 : part.anchor === 'end' ? width : width / 2;
      // A line behind letters makes them hard to read.
      doc.rect(part.x - left - 1, part.y - 9.5, width + 2, 11.5).fill('white');
      doc.fillColor('black');
      doc.text(part.text, part.x - left, part.y, { lineBreak: false, baseline: 'alphabetic' });
      break;
    }
    case 'sample':
      drawSample(doc, part);
  }
}

function stroke(doc: Doc, d: string, { width, dash, grey: share = 0 }: Stroke): void {
  doc.path(d).lineWidth(width).strokeColor(grey(share));
  if (dash) doc.dash(dash[0] as number, { space: dash[1] as number });
  else doc.undash();
  doc.stroke().undash();
}

function drawSample(doc: Doc, { x, y, gain, cameBy, retracted }: SamplePart): void {
  const { d, hollow } = shapeOf(gain);
  doc.save().translate(x, y);
  if (cameBy !== 0) stroke(doc, `M${-4 * cameBy},0H${-13 * cameBy}`, STROKES.tail);
  doc.path(d).lineWidth(1.5);
  doc.fillAndStroke(hollow || retracted ? 'white' : 'black', 'black');
  if (retracted) stroke(doc, 'M-8,8L8,-8', STROKES.strike);
  doc.restore();
}
