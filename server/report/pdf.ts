import PDFDocument from 'pdfkit';
import { type Block, type Page, pageNumber } from '../../src/report/report.ts';
import { type Fonts, loadFonts } from './fonts.ts';
import { layBlock, type Sheet } from './layout.ts';

/** A4, points. */
const PAPER = { width: 595.28, height: 841.89 } as const;
const EDGE = { side: 40, top: 34, bottom: 40 } as const;
const WIDTH = PAPER.width - 2 * EDGE.side;
const LOWEST = PAPER.height - EDGE.bottom;

/** Sizes of type, tried in this order until a page fits. */
const TYPES = [1, 0.92, 0.85, 0.78, 0.7, 0.62];
/** Smaller charts cannot be read, points a pixel. Their type is 12 pixels. */
const LEAST_CHARTS = 0.55;

let fonts: Fonts | undefined;

/** A report on paper, printed page by page. */
export class ReportPdf {
  readonly #doc: PDFKit.PDFDocument;
  readonly #whole: Promise<Buffer>;
  readonly #total: number;
  #pages = 0;

  /** `title`: of the document; `total`: its pages. */
  constructor(title: string, total: number) {
    fonts ??= loadFonts();
    this.#total = total;
    this.#doc = new PDFDocument({
      size: 'A4',
      // One page, one sheet: a page that is too long shrinks, and never runs on to another sheet.
      margins: { top: 0, left: 0, right: 0, bottom: -1e6 },
      autoFirstPage: false,
      lang: 'en',
      displayTitle: true,
      info: { Title: title, Creator: 'Ladderline' },
    });
    for (const [name, font] of Object.entries(fonts)) this.#doc.registerFont(name, font);
    this.#whole = collected(this.#doc);
  }

  /** Prints one page. Its type shrinks until it fits the sheet. */
  add(page: Page): void {
    const doc = this.#doc.addPage();
    const sheet = (type: number, ink: boolean): Sheet => ({ doc, x: EDGE.side, width: WIDTH, type, ink });
    const charts = page.blocks.reduce((sum, block) => sum + chartHeight(block), 0);
    const scaleAt = (type: number) => (LOWEST - layPage(sheet(type, false), page, 0)) / charts;
    const smallest = TYPES.at(-1) as number;
    const type = TYPES.find((each) => scaleAt(each) >= (charts > 0 ? LEAST_CHARTS : 0)) ?? smallest;
    const chartScale = charts > 0 ? Math.max(0, scaleAt(type)) : 0;
    const end = layPage(sheet(type, false), page, chartScale);
    doc.save().scale(Math.min(1, LOWEST / end));
    layPage(sheet(type, true), page, chartScale);
    doc.restore();
    this.#foot(page.foot);
  }

  /** The file. Call it when all pages are printed. */
  end(): Promise<Buffer> {
    this.#doc.end();
    return this.#whole;
  }

  #foot(text: string): void {
    const y = PAPER.height - EDGE.bottom + 12;
    const number = pageNumber(this.#pages++, this.#total);
    this.#doc.font('plain').fontSize(6.5).fillColor('black');
    this.#doc.text(text, EDGE.side, y, { lineBreak: false });
    this.#doc.text(number, EDGE.side, y, { width: WIDTH, align: 'right', lineBreak: false });
  }
}

/** Height of the drawings of a block, pixels. */
const chartHeight = (block: Block): number =>
  block.kind === 'charts' ? Math.max(...block.charts.map(({ scene }) => scene?.height ?? 0)) : 0;

/** Prints a page's head and blocks, and returns where they end. */
function layPage(sheet: Sheet, { title, subtitle, badge, blocks }: Page, chartScale: number): number {
  const { doc, x, width, type, ink } = sheet;
  doc.font('bold').fontSize(9);
  const badgeWidth = doc.widthOfString(badge.text) + 16;
  doc.fontSize(17 * type);
  const titleHeight = doc.heightOfString(title, { width: width - badgeWidth - 12 });
  doc.font('plain').fontSize(8 * type);
  const subtitleHeight = doc.heightOfString(subtitle, { width });
  if (ink) {
    doc
      .font('bold')
      .fontSize(17 * type)
      .fillColor('black');
    doc.text(title, x, EDGE.top, { width: width - badgeWidth - 12 });
    layBadge(sheet, badge, x + width - badgeWidth, badgeWidth);
    doc
      .font('plain')
      .fontSize(8 * type)
      .fillColor('black');
    doc.text(subtitle, x, EDGE.top + titleHeight, { width });
  }
  return blocks.reduce(
    (y: number, block: Block) => layBlock(sheet, block, y, chartScale),
    EDGE.top + titleHeight + subtitleHeight + 8,
  );
}

/** Black when someone must look at it, else an outline. */
function layBadge({ doc }: Sheet, { text, heed }: Page['badge'], x: number, width: number): void {
  doc.undash().lineWidth(1).rect(x, EDGE.top, width, 19);
  if (heed) doc.fillAndStroke('black', 'black');
  else doc.stroke('black');
  doc
    .font('bold')
    .fontSize(9)
    .fillColor(heed ? 'white' : 'black');
  doc.text(text, x + 8, EDGE.top + 4.5, { lineBreak: false });
}

function collected(doc: PDFKit.PDFDocument): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    doc.on('data', (part: Buffer) => parts.push(part));
    doc.on('end', () => resolve(Buffer.concat(parts)));
    doc.on('error', reject);
  });
}
