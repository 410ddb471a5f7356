import PDFDocument from 'pdfkit';
import type { Seq } from '../../src/model/ids.ts';
import { continuedText, TO_COVER } from '../../src/phrases/headings.ts';
import { COVER, type Part, pageNumber } from '../../src/report/report.ts';
import { piecesOf } from './blocks.ts';
import { flow, type Piece, type Placed } from './flow.ts';
import { type Fonts, loadFonts } from './fonts.ts';
import { lineHeight, Measure, SIZE } from './measure.ts';
import { Pen, places } from './pen.ts';
import { heightOf, piece, type Setting, set } from './setting.ts';
import { countBookmarks, identify } from './standards.ts';

/** A4, points. */
const PAPER = { width: 595.28, height: 841.89 } as const;
const EDGE = { side: 40, top: 36, bottom: 54 } as const;
const WIDTH = PAPER.width - 2 * EDGE.side;
/** Above the foot of a sheet; a further one has a line at its head that names its part. */
const ROOM = { first: EDGE.top, top: EDGE.top + 20, bottom: PAPER.height - EDGE.bottom } as const;

let fonts: Fonts | undefined;

/** Pictures by the entry of their photo. */
export type Pictures = ReadonlyMap<Seq, Uint8Array>;

/** What the file says about itself. */
export interface About {
  readonly title: string;
  /** When the report was made, ms. */
  readonly at: number;
}

/**
 * A report on paper: tagged for screen readers, and fit for archives. Every part is set before the first is printed,
 * because the cover comes first and names the pages on which the others begin; it alone is set twice.
 */
export class ReportPdf {
  readonly #doc: PDFKit.PDFDocument;
  readonly #whole: Promise<Buffer>;
  readonly #pen: Pen;
  readonly #measure: Measure;
  readonly #parts: readonly Part[];
  /** Where each part begins, by its `id`, from 0. */
  readonly #begins = new Map<string, number>();
  /** Parts that were set and not yet printed, by their `id`. */
  readonly #set = new Map<string, readonly Placed[][]>();
  /** Of the part that is printed. */
  #pictures: Pictures = new Map();
  #bookmark: PDFKit.PDFOutline | undefined;
  #total = 0;
  #sheet = 0;

  constructor(parts: readonly Part[], { title, at }: About) {
    fonts ??= loadFonts();
    this.#parts = parts;
    this.#measure = new Measure(fonts);
    this.#doc = new PDFDocument({
      size: 'A4',
      margin: 0,
      autoFirstPage: false,
      pdfVersion: '1.7',
      tagged: true,
      subset: 'PDF/A-2a',
      lang: 'en',
      displayTitle: true,
      info: { Title: title, Creator: 'Ladderline', CreationDate: new Date(at) },
    });
    identify(this.#doc);
    for (const [name, font] of Object.entries(fonts)) {
      this.#doc.registerFont(name, font as unknown as Buffer);
    }
    this.#whole = collected(this.#doc);
    this.#pen = new Pen(this.#doc, this.#measure);
  }

  /** Sets a part without printing it. Call it for each part, in order, before the first is printed. */
  count(part: Part): void {
    this.#begins.set(part.id, this.#total);
    const sheets = this.#sheetsOf(part);
    this.#total += sheets.length;
    if (part.id !== COVER) this.#set.set(part.id, sheets);
  }

  /** `pictures`: of its photos. */
  print(part: Part, pictures: Pictures = new Map()): void {
    const pen = this.#pen;
    this.#pictures = pictures;
    const sheets = this.#set.get(part.id) ?? this.#sheetsOf(part);
    this.#set.delete(part.id);
    pen.linkTo(
      part.id,
      new Set(
        part.blocks.flatMap((block) => (block.kind === 'entries' ? block.rows.map(({ seq }) => seq) : [])),
      ),
    );
    for (const [index, sheet] of sheets.entries()) {
      this.#doc.addPage();
      if (index === 0) {
        pen.open({ type: 'Sect', title: part.title });
        pen.place(places.part(part.id), 0);
        this.#bookmark = this.#doc.outline.addItem(part.title);
      } else this.#running(part);
      for (const { piece, y } of sheet) piece.draw(pen, y);
      this.#foot(part.foot);
    }
    pen.close();
  }

  /** The file. Call it when all parts are printed. */
  end(): Promise<Buffer> {
    this.#pen.close();
    countBookmarks(this.#doc);
    this.#doc.end();
    return this.#whole;
  }

  #sheetsOf(part: Part): Placed[][] {
    const setting: Setting = {
      measure: this.#measure,
      x: EDGE.side,
      width: WIDTH,
      part: part.id,
      pageOf: (id) => String((this.#begins.get(id) ?? 0) + 1),
      pictureOf: ({ photo }) => this.#pictures.get(photo),
      onHeading: (title, top) => this.#bookmark?.addItem(title, leadingTo(top)),
    };
    const hasCover = this.#parts[0]?.id === COVER && part.id !== COVER;
    const pieces = [
      ...headOf(setting, part, hasCover),
      ...part.blocks.flatMap((block) => piecesOf(setting, block)),
    ];
    return flow(pieces, ROOM);
  }

  /** What a further sheet belongs to. */
  #running({ title }: Part): void {
    this.#pen.artifact(() => {
      const [line = ''] = this.#measure.lines(continuedText(title), 'bold', SIZE.small, WIDTH);
      this.#pen.print({ face: 'bold', size: SIZE.small }, line, EDGE.side, EDGE.top);
    }, 'Pagination');
  }

  #foot(text: string): void {
    const size = SIZE.small;
    const y = PAPER.height - EDGE.bottom + 12;
    const number = pageNumber(this.#sheet++, this.#total);
    this.#pen.artifact(() => {
      this.#pen.print({ face: 'plain', size }, text, EDGE.side, y);
      const left = EDGE.side + WIDTH - this.#measure.width(number, 'plain', size);
      this.#pen.print({ face: 'plain', size }, number, left, y + lineHeight(size));
    }, 'Pagination');
  }
}

/** A bookmark to this height of the sheet, points from its top; its type leaves out what PDFKit can do. */
const leadingTo = (top: number): { readonly expanded: boolean } => {
  // PDFKit counts `left` from the right.
  const options = { expanded: false, fit: false, top, left: PAPER.width };
  return options;
};

const BADGE = { size: 10, side: 8, edge: 4 } as const;

/** The title of a part, its status in a box beside it, and the way back to the cover. */
function headOf(setting: Setting, { title, subtitle, badge }: Part, hasCover: boolean): Piece[] {
  const { measure, x, width } = setting;
  const boxed = measure.lines(badge.text, 'bold', BADGE.size, width * 0.4 - 2 * BADGE.side);
  const boxWidth =
    Math.max(...boxed.map((line) => measure.width(line, 'bold', BADGE.size)), 0) + 2 * BADGE.side;
  const boxHeight = boxed.length * lineHeight(BADGE.size) + 2 * BADGE.edge;
  const name = set(setting, title, x, width - boxWidth - 12, SIZE.title, 'bold');
  const below = set(setting, subtitle, x, width - boxWidth - 12);
  const head: Piece = {
    height: Math.max(heightOf(name) + heightOf(below), boxHeight) + 6,
    withNext: true,
    draw: (pen, y) => {
      pen.element({ type: 'H1' }, name, y);
      pen.element({ type: 'P' }, below, y + heightOf(name));
      const left = x + width - boxWidth;
      pen.artifact(() => {
        // Black when someone must look at it, else an outline.
        pen.doc.undash().lineWidth(1).rect(left, y, boxWidth, boxHeight);
        if (badge.heed) pen.doc.fillAndStroke('black', 'black');
        else pen.doc.stroke('black');
      });
      const colour = badge.heed ? 'white' : 'black';
      const words = { lines: boxed, x: left + BADGE.side, face: 'bold', size: BADGE.size, colour } as const;
      pen.element({ type: 'P' }, words, y + BADGE.edge);
    },
  };
  const back = { ...set(setting, TO_COVER, x, width), to: places.part(COVER) };
  return hasCover
    ? [head, piece({ type: 'P' }, back, { height: heightOf(back) + 6, withNext: true })]
    : [head];
}

function collected(doc: PDFKit.PDFDocument): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    doc.on('data', (part: Buffer) => parts.push(part));
    doc.on('end', () => resolve(Buffer.concat(parts)));
    doc.on('error', reject);
  });
}
