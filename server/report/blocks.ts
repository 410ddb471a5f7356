import type { Key } from '../../src/charts/scene.ts';
import type { Captioned } from '../../src/charts/turns-scene.ts';
import type { Signature } from '../../src/model/facts.ts';
import { HEADINGS } from '../../src/phrases/headings.ts';
import { SIGNATURE_ALT } from '../../src/phrases/signature.ts';
import { type Block, type Cell, type Column, type EntryRow, titleOf } from '../../src/report/report.ts';
import { columnWidths } from './columns.ts';
import { drawKey, drawScene } from './draw-scene.ts';
import type { Piece } from './flow.ts';
import type { Face } from './fonts.ts';
import { lineHeight, SIZE } from './measure.ts';
import { type Pen, places, type Words } from './pen.ts';
import { photoGrid } from './photo-grid.ts';
import { heightOf, piece, type Setting, set } from './setting.ts';

const GAP = 6;
const CELL = 2;

/** A block as pieces for `flow`. */
export function piecesOf(setting: Setting, block: Block): Piece[] {
  const pieces = bodyOf(setting, block);
  const title = titleOf(block);
  return [...(title === undefined ? [] : [heading(setting, title)]), ...pieces, space(GAP)];
}

function bodyOf(setting: Setting, block: Block): Piece[] {
  switch (block.kind) {
    case 'figures':
      return figures(setting, block.items);
    case 'facts':
      return listed(
        setting,
        block.rows.map(({ name, value }) => ({ lead: name, text: value })),
        true,
      );
    case 'list':
      return block.items.length === 0 ? [paragraph(setting, block.empty)] : listed(setting, block.items);
    case 'table':
      return block.rows.length === 0
        ? [paragraph(setting, block.empty)]
        : table(setting, block.columns, block.rows);
    case 'entries':
      return table(setting, block.columns, block.rows.map(entryCells), block.rows);
    case 'signature':
      return signature(setting, block.lines, block.signature);
    case 'photos':
      return [...photoGrid(setting, block.photos), ...block.gone.map((text) => paragraph(setting, text))];
    case 'charts':
      return [charts(setting, block.charts)];
  }
}

const space = (height: number): Piece => ({ height, draw: () => {} });

function heading(setting: Setting, title: string): Piece {
  const words = set(setting, title, setting.x, setting.width, SIZE.head, 'bold');
  return {
    height: heightOf(words) + GAP + 2,
    withNext: true,
    draw: (pen, y) => {
      pen.place(places.block(setting.part, title), y);
      setting.onHeading(title, y);
      pen.element({ type: 'H2' }, words, y + GAP);
    },
  };
}

const paragraph = (setting: Setting, text: string): Piece =>
  piece({ type: 'P' }, set(setting, text, setting.x, setting.width));

/** How many answers stand in a row: the most that leave each value and note on one line. */
const ACROSS = [6, 3];

/** Large answers. */
function figures(setting: Setting, items: Extract<Block, { kind: 'figures' }>['items']): Piece[] {
  const { part } = setting;
  const fits = (across: number): boolean =>
    items.every(({ name, value, note }) => {
      const room = setting.width / across - GAP * 2;
      return (
        setting.measure.lines(name, 'bold', SIZE.small, room).length < 3 &&
        setting.measure.lines(value, 'bold', SIZE.value, room).length < 2 &&
        setting.measure.lines(note, 'plain', SIZE.small, room).length < 2
      );
    });
  const across = ACROSS.find(fits) ?? 3;
  const width = setting.width / across;
  const rows = Array.from({ length: Math.ceil(items.length / across) }, (_, row) =>
    items.slice(row * across, (row + 1) * across),
  );
  return rows.map((row, index): Piece => {
    const cells = row.map(({ name, value, note }, at) => {
      const x = setting.x + at * width;
      const room = width - GAP * 2;
      return [
        set(setting, name, x, room, SIZE.small, 'bold'),
        set(setting, value, x, room, SIZE.value, 'bold'),
        set(setting, note, x, room, SIZE.small),
      ] as const;
    });
    const below = Math.max(...cells.map(([name]) => heightOf(name)));
    const height = below + Math.max(...cells.map(([, value, note]) => heightOf(value) + heightOf(note)));
    return {
      height: height + GAP,
      withNext: index < rows.length - 1,
      draw: (pen, y) => {
        if (index === 0) {
          pen.place(places.block(part, HEADINGS.summary), y);
          pen.open({ type: 'L' });
        }
        for (const [name, value, note] of cells) {
          pen.open({ type: 'LI' });
          pen.element({ type: 'Lbl' }, name, y);
          pen.open({ type: 'LBody' });
          pen.words(value, y + below);
          pen.words(note, y + below + heightOf(value));
          pen.close();
          pen.close();
        }
        if (index === rows.length - 1) {
          pen.close();
          rule(pen, setting, y + height + GAP / 2);
        }
      },
    };
  });
}

const LEAD_SHARE = 0.17;
const HASH = /^[0-9a-f]{64}$/;

/** A word or two on the left, the text beside it. `together`: on one sheet, if one holds it. */
function listed(
  setting: Setting,
  items: readonly { lead: string; text: string }[],
  together = false,
): Piece[] {
  const { measure, x, width } = setting;
  const widest = Math.max(0, ...items.map(({ lead }) => measure.widest(lead, 'bold', SIZE.body)));
  const left = Math.max(width * LEAD_SHARE, widest + GAP);
  return items.map(({ lead, text }, index): Piece => {
    const label = set(setting, lead, x, left - GAP, SIZE.body, 'bold');
    const face = HASH.test(text) ? 'mono' : 'plain';
    const body = set(setting, text, x + left, width - left, face === 'mono' ? SIZE.small : SIZE.body, face);
    return {
      height: Math.max(heightOf(label), heightOf(body)) + CELL,
      withNext: together && index < items.length - 1,
      draw: (pen, y) => {
        if (index === 0) pen.open({ type: 'L' });
        pen.open({ type: 'LI' });
        pen.element({ type: 'Lbl' }, label, y);
        pen.element({ type: 'LBody' }, body, y);
        pen.close();
        if (index === items.length - 1) pen.close();
      },
    };
  });
}

const entryCells = ({ seq, time, who, text, namedIn }: EntryRow): Cell[] => [
  `#${seq}`,
  time,
  who,
  text,
  namedIn.map(unbroken).join(' '),
];

/** In one line, whatever the width. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');

/** Rows under a head that stands again on each further sheet. `entries`: the rows are those of these entries. */
function table(
  setting: Setting,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  entries?: readonly EntryRow[],
): Piece[] {
  const { measure, part } = setting;
  const shown = rows.map((row) => row.map((cell) => cellWords(setting, cell)));
  const widths = columnWidths(
    columns.map(({ name, share }, index) => ({
      share,
      widest:
        GAP +
        Math.max(
          measure.widest(name, 'bold', SIZE.small),
          ...shown.map((row) => measure.widest(row[index]?.text ?? '', 'plain', SIZE.body)),
        ),
    })),
    setting.width,
  );
  const edges = widths.map((_, index) => widths.slice(0, index).reduce((sum, each) => sum + each, setting.x));
  const cell = (text: string, index: number, size: number, face: Face): Words =>
    set(setting, text, edges[index] ?? setting.x, (widths[index] ?? 0) - GAP, size, face);
  const names = columns.map(({ name }, index) => cell(name, index, SIZE.small, 'bold'));
  const headHeight = Math.max(...names.map(heightOf)) + 2 * CELL;
  const under = (pen: Pen, y: number) => rule(pen, setting, y + headHeight - CELL);
  const head: Piece = {
    height: headHeight,
    withNext: true,
    draw: (pen, y) => {
      pen.open({ type: 'Table' });
      pen.open({ type: 'THead' });
      pen.open({ type: 'TR' });
      for (const words of names) pen.element({ type: 'TH', scope: 'Column' }, words, y);
      pen.close();
      pen.close();
      pen.open({ type: 'TBody' });
      under(pen, y);
    },
  };
  const again: Piece = {
    height: headHeight,
    draw: (pen, y) => {
      pen.artifact(() => {
        for (const words of names) {
          for (const [index, line] of words.lines.entries()) {
            pen.print(words, line, words.x, y + index * lineHeight(words.size));
          }
        }
      }, 'Pagination');
      under(pen, y);
    },
  };
  return [
    head,
    ...shown.map((row, at): Piece => {
      const entry = entries?.[at];
      const cells = row.map(
        ({ text, to }, index): Words => ({
          ...cell(text, index, SIZE.body, 'plain'),
          ...(to !== undefined && { to }),
          ...(entry && index === 0 && { plain: true }),
        }),
      );
      const last = cells.at(-1);
      if (entry && last) {
        const lines = entry.namedIn.map(unbroken);
        cells[cells.length - 1] = {
          ...last,
          lines,
          to: entry.namedIn.map((title) => places.block(part, title)),
        };
      }
      return {
        height: Math.max(...cells.map(heightOf)) + CELL,
        again,
        draw: (pen, y) => {
          if (entry) pen.place(places.entry(part, entry.seq), y);
          pen.open({ type: 'TR' });
          for (const [index, words] of cells.entries()) {
            pen.element(index === 0 ? { type: 'TH', scope: 'Row' } : { type: 'TD' }, words, y);
          }
          pen.close();
          if (at < shown.length - 1) return;
          pen.close();
          pen.close();
        },
      };
    }),
  ];
}

function cellWords({ pageOf }: Setting, cell: Cell): { text: string; to?: string } {
  if (typeof cell === 'string') return { text: cell };
  if ('pageOf' in cell) return { text: pageOf(cell.pageOf), to: places.part(cell.pageOf) };
  return { text: cell.text, to: places.part(cell.part) };
}

/** The size of the box that strokes were drawn in; below it, its width on paper, points. */
const PAD = { width: 1000, height: 400 } as const;
const SIGNED_WIDTH = 130;

/** Who signed, and the signature itself under it. */
function signature(setting: Setting, lines: readonly string[], signed: Signature | undefined): Piece[] {
  const { x, width } = setting;
  const texts = lines.map((line) => piece({ type: 'P' }, set(setting, line, x, width), { withNext: true }));
  if (!signed) return [...texts, space(0)];
  if (signed.kind === 'typed') {
    const name = set(setting, signed.text, x, width, SIZE.head, 'bold');
    return [...texts, { ...space(CELL), withNext: true }, piece({ type: 'P' }, name)];
  }
  const scale = SIGNED_WIDTH / PAD.width;
  const height = PAD.height * scale;
  const strokes: Piece = {
    height,
    draw: (pen, y) => {
      pen.open({ type: 'Figure', alt: SIGNATURE_ALT, bbox: [x, y, x + SIGNED_WIDTH, y + height] });
      pen.content(() => drawStrokes(pen.doc, signed.strokes, x, y, scale));
      pen.close();
    },
  };
  return [...texts, strokes];
}

function drawStrokes(
  doc: PDFKit.PDFDocument,
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

/** Charts side by side, each as wide as its share. */
function charts(setting: Setting, all: readonly Captioned[]): Piece {
  const width = (setting.width - GAP * 2 * (all.length - 1)) / all.length;
  const laid = all.map((chart, index) =>
    chartIn(setting, chart, setting.x + index * (width + 2 * GAP), width),
  );
  return {
    height: Math.max(...laid.map(({ height }) => height)),
    draw: (pen, y) => {
      for (const each of laid) each.draw(pen, y);
    },
  };
}

function chartIn(setting: Setting, { title, caption, scene }: Captioned, x: number, width: number): Piece {
  const name = set(setting, title, x, width, SIZE.body, 'bold');
  const note = set(setting, caption, x, width, SIZE.small);
  const top = GAP + heightOf(name) + heightOf(note) + CELL;
  const scale = scene ? width / scene.width : 0;
  const drawn = scene ? scene.height * scale : 0;
  const keys = keysIn(setting, scene?.keys ?? [], x, width);
  return {
    height: top + drawn + keys.height,
    draw: (pen, y) => {
      pen.element({ type: 'H3' }, name, y + GAP);
      if (note.lines.length > 0) pen.element({ type: 'P' }, note, y + GAP + heightOf(name));
      if (!scene) return;
      pen.open({
        type: 'Figure',
        alt: `${scene.name}. ${caption}`.trim(),
        bbox: [x, y + top, x + width, y + top + drawn],
      });
      pen.content(() => drawScene(pen.doc, scene, x, y + top, scale));
      pen.close();
      keys.draw(pen, y + top + drawn);
    },
  };
}

/** What the marks of a chart mean, as many in a line as fit. */
function keysIn(setting: Setting, keys: readonly Key[], x: number, width: number): Piece {
  const mark = KEY * KEY_SCALE;
  const row = Math.max(mark, lineHeight(SIZE.small)) + 1;
  let left = x;
  let top = 0;
  const laid = keys.map((key) => {
    const room = mark + 4 + setting.measure.width(key.text, 'plain', SIZE.small) + 10;
    if (left > x && left + room > x + width) {
      left = x;
      top += row;
    }
    const words = set(setting, key.text, left + mark + 4, width - mark - 4, SIZE.small);
    const placed = { key, words, x: left, y: top };
    left += room;
    top += heightOf(words) - lineHeight(SIZE.small);
    return placed;
  });
  return {
    height: keys.length === 0 ? 0 : top + row + CELL,
    draw: (pen, y) => {
      if (laid.length === 0) return;
      pen.open({ type: 'L' });
      for (const { key, words, x, y: at } of laid) {
        pen.artifact(() => drawKey(pen.doc, key, x + mark / 2, y + at + row / 2, KEY_SCALE));
        pen.open({ type: 'LI' });
        pen.element({ type: 'LBody' }, words, y + at);
        pen.close();
      }
      pen.close();
    },
  };
}

function rule(pen: Pen, { x, width }: Setting, y: number): void {
  const { doc } = pen;
  pen.artifact(() =>
    doc
      .undash()
      .lineWidth(0.5)
      .moveTo(x, y)
      .lineTo(x + width, y)
      .stroke('black'),
  );
}
