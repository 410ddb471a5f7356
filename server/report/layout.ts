import type { Key } from '../../src/charts/scene.ts';
import type { Captioned } from '../../src/charts/turns-scene.ts';
import type { Signature } from '../../src/model/facts.ts';
import type { Block, Column } from '../../src/report/report.ts';
import { drawKey, drawScene } from './draw-scene.ts';

type Doc = PDFKit.PDFDocument;
type Face = 'plain' | 'bold' | 'mono';

/** Where blocks go: a column of paper, in points. */
export interface Sheet {
  readonly doc: Doc;
  readonly x: number;
  readonly width: number;
  /** The size of the type, as a factor of the usual size. */
  readonly type: number;
  /** False: only measure, print nothing. */
  readonly ink: boolean;
}

const SIZE = { value: 12, head: 10, body: 8, small: 7 } as const;
const GAP = 4;

/** Prints words and returns their height. */
function words(
  { doc, type, ink }: Sheet,
  text: string,
  x: number,
  y: number,
  width: number,
  size: number = SIZE.body,
  face: Face = 'plain',
): number {
  if (text === '') return 0;
  doc.font(face).fontSize(size * type);
  const height = doc.heightOfString(text, { width });
  if (ink) doc.fillColor('black').text(text, x, y, { width });
  return height;
}

const heading = (sheet: Sheet, title: string, y: number): number =>
  y + words(sheet, title, sheet.x, y, sheet.width, SIZE.head, 'bold') + 1;

/** Prints a block with its top at `y` and returns where it ends. Charts have `chartScale` points a pixel. */
export function layBlock(sheet: Sheet, block: Block, y: number, chartScale: number): number {
  switch (block.kind) {
    case 'figures':
      return layFigures(sheet, block.items, y);
    case 'facts':
      return layFacts(sheet, block.rows, heading(sheet, block.title, y)) + GAP;
    case 'table':
      return layTable(sheet, block.columns, block.rows, block.empty, heading(sheet, block.title, y)) + GAP;
    case 'list':
      return layList(sheet, block.items, block.empty, heading(sheet, block.title, y)) + GAP;
    case 'signature':
      return laySignature(sheet, block.lines, block.signature, heading(sheet, block.title, y)) + GAP;
    case 'charts':
      return layCharts(sheet, block.charts, y, chartScale) + GAP;
  }
}

function layFigures(sheet: Sheet, items: Extract<Block, { kind: 'figures' }>['items'], y: number): number {
  const across = 6;
  const width = sheet.width / across;
  let top = y;
  for (let row = 0; row < items.length; row += across) {
    const ends = items.slice(row, row + across).map(({ name, value, note }, index) => {
      const x = sheet.x + index * width;
      let at = top + words(sheet, name, x, top, width - GAP, SIZE.small, 'bold');
      at += words(sheet, value, x, at, width - GAP, SIZE.value, 'bold');
      return at + words(sheet, note, x, at, width - GAP, SIZE.small);
    });
    top = Math.max(...ends) + GAP;
  }
  rule(sheet, top);
  return top + GAP;
}

const NAME_SHARE = 0.15;

function layFacts(sheet: Sheet, rows: Extract<Block, { kind: 'facts' }>['rows'], y: number): number {
  const name = sheet.width * NAME_SHARE;
  let top = y;
  for (const row of rows) {
    const face = /^[0-9a-f]{64}$/.test(row.value) ? 'mono' : 'plain';
    const heights = [
      words(sheet, row.name, sheet.x, top, name - GAP, SIZE.body, 'bold'),
      words(sheet, row.value, sheet.x + name, top, sheet.width - name, SIZE.body, face),
    ];
    top += Math.max(...heights) + 1;
  }
  return top;
}

function layTable(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  empty: string,
  y: number,
): number {
  if (rows.length === 0) return y + words(sheet, empty, sheet.x, y, sheet.width);
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  const edges = columns.map(
    (_, index) => (columns.slice(0, index).reduce((sum, { share }) => sum + share, 0) / shares) * sheet.width,
  );
  const line = (cells: readonly string[], top: number, size: number, face: Face): number => {
    const heights = cells.map((cell, index) => {
      const left = edges[index] ?? 0;
      const right = edges[index + 1] ?? sheet.width;
      return words(sheet, cell, sheet.x + left, top, right - left - GAP, size, face);
    });
    return top + Math.max(...heights) + 1;
  };
  const names = columns.map(({ name }) => name);
  let top = line(names, y, SIZE.small, 'bold');
  rule(sheet, top);
  top += 2;
  for (const row of rows) top = line(row, top, SIZE.body, 'plain');
  return top;
}

const LEAD_SHARE = 0.15;

function layList(
  sheet: Sheet,
  items: Extract<Block, { kind: 'list' }>['items'],
  empty: string,
  y: number,
): number {
  if (items.length === 0) return y + words(sheet, empty, sheet.x, y, sheet.width);
  const lead = sheet.width * LEAD_SHARE;
  let top = y;
  for (const item of items) {
    const heights = [
      words(sheet, item.lead, sheet.x, top, lead - GAP, SIZE.body, 'bold'),
      words(sheet, item.text, sheet.x + lead, top, sheet.width - lead),
    ];
    top += Math.max(...heights) + 1;
  }
  return top;
}

/** The size of the box that strokes were drawn in; below it, its width on paper, points. */
const PAD = { width: 1000, height: 400 } as const;
const SIGNED_WIDTH = 90;

function laySignature(
  sheet: Sheet,
  lines: readonly string[],
  signature: Signature | undefined,
  y: number,
): number {
  const room = signature ? SIGNED_WIDTH + 2 * GAP : 0;
  let top = y;
  for (const line of lines) top += words(sheet, line, sheet.x, top, sheet.width - room);
  if (!signature) return top;
  const x = sheet.x + sheet.width - SIGNED_WIDTH;
  if (signature.kind === 'typed') {
    return Math.max(top, y + words(sheet, signature.text, x, y, SIGNED_WIDTH, SIZE.head, 'bold'));
  }
  const scale = SIGNED_WIDTH / PAD.width;
  if (sheet.ink) drawStrokes(sheet.doc, signature.strokes, x, y - SIZE.head, scale);
  return Math.max(top, y - SIZE.head + PAD.height * scale);
}

function drawStrokes(
  doc: Doc,
  strokes: readonly (readonly [number, number][])[],
  x: number,
  y: number,
  scale: number,
): void {
  doc.save().translate(x, y).scale(scale).lineWidth(12).lineCap('round').lineJoin('round');
  for (const stroke of strokes) {
    const [first = [0, 0], ...rest] = stroke;
    doc.moveTo(first[0], first[1]);
    // A tap is a dot.
    for (const point of rest.length > 0 ? rest : [first]) doc.lineTo(point[0], point[1]);
    doc.stroke('black');
  }
  doc.restore();
}

const KEY = 20;
const KEY_SCALE = 0.5;

/** Charts side by side, each at most as wide as its share. */
function layCharts(sheet: Sheet, charts: readonly Captioned[], y: number, most: number): number {
  const width = (sheet.width - GAP * 2 * (charts.length - 1)) / charts.length;
  const ends = charts.map((chart, index) => {
    const x = sheet.x + index * (width + 2 * GAP);
    let top = y + words(sheet, chart.title, x, y, width, SIZE.body, 'bold');
    top += words(sheet, chart.caption, x, top, width, SIZE.small);
    const { scene } = chart;
    if (!scene) return top;
    const scale = Math.min(width / scene.width, most);
    if (sheet.ink) drawScene(sheet.doc, scene, x, top, scale);
    return layKeys(sheet, scene.keys, x, top + scene.height * scale, width);
  });
  return Math.max(...ends);
}

function layKeys(sheet: Sheet, keys: readonly Key[], x: number, y: number, width: number): number {
  const { doc, type } = sheet;
  const mark = KEY * KEY_SCALE;
  let left = x;
  let top = y;
  for (const key of keys) {
    doc.font('plain').fontSize(SIZE.small * type);
    const room = mark + 3 + doc.widthOfString(key.text) + 8;
    if (left > x && left + room > x + width) {
      left = x;
      top += mark;
    }
    if (sheet.ink) drawKey(doc, key, left + mark / 2, top + mark / 2, KEY_SCALE);
    words(sheet, key.text, left + mark + 3, top + 1, width - mark, SIZE.small);
    left += room;
  }
  return top + mark + 2;
}

function rule({ doc, x, width, ink }: Sheet, y: number): void {
  if (ink)
    doc
      .undash()
      .lineWidth(0.5)
      .moveTo(x, y)
      .lineTo(x + width, y)
      .stroke('black');
}
