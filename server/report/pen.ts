import type { Seq } from '../../src/model/ids.ts';
import { goToText } from '../../src/phrases/headings.ts';
import { atMentions } from '../../src/report/named-entries.ts';
import type { Face } from './fonts.ts';
import { lineHeight, type Measure } from './measure.ts';

type Doc = PDFKit.PDFDocument;

/** What a reader with a screen reader is told about an element; the names are those of ISO 32000-1, 14.8. */
export interface Tag {
  readonly type: string;
  readonly scope?: 'Row' | 'Column';
  readonly alt?: string;
  readonly title?: string;
  /** Of a figure: left, top, right, bottom, points from the upper left corner. */
  readonly bbox?: readonly [number, number, number, number];
}

/** A text that is broken into lines. */
export interface Words {
  readonly lines: readonly string[];
  readonly x: number;
  readonly face: Face;
  readonly size: number;
  readonly colour?: 'black' | 'white';
  /** The place that each line leads to, or one for all. */
  readonly to?: string | readonly string[];
  /** Its "#12" leads nowhere: it is the place itself. */
  readonly plain?: boolean;
}

/** Names of places that links lead to. */
export const places = {
  part: (part: string): string => `part ${part}`,
  block: (part: string, title: string): string => `block ${part} ${title}`,
  entry: (part: string, seq: Seq): string => `entry ${part} ${seq}`,
};

/** PDFKit writes a plain string as a name; this is a text. */
const textValue = (text: string): string => new String(text) as string;

/** One line, whose width PDFKit need not learn: it draws nothing under it and no link on it. Its types leave that out. */
const UNMEASURED = { lineBreak: false, textWidth: 0, wordCount: 0 } as PDFKit.Mixins.TextOptions;

/** Prints on the sheet that was begun last, and keeps the structure that screen readers follow. */
export class Pen {
  readonly #open: PDFKit.PDFStructureElement[];
  /** The entries that can be jumped to, and the part they are in. */
  #known: { readonly part: string; readonly seqs: ReadonlySet<Seq> } = { part: '', seqs: new Set() };

  constructor(
    readonly doc: Doc,
    private readonly measure: Measure,
  ) {
    const root = doc.struct('Document');
    doc.addStructure(root);
    this.#open = [root];
  }

  /** From now on "#12" leads to the row of entry 12 of this part. */
  linkTo(part: string, seqs: ReadonlySet<Seq>): void {
    this.#known = { part, seqs };
  }

  open({ type, ...options }: Tag): void {
    const element = this.doc.struct(type, options as PDFKit.Mixins.StructureElementOptions);
    this.#open.at(-1)?.add(element);
    this.#open.push(element);
  }

  close(): void {
    this.#open.pop()?.end();
  }

  /** Everything that is drawn is content of the innermost open element. */
  content(draw: () => void): void {
    const element = this.#open.at(-1) as PDFKit.PDFStructureElement;
    const type = (element as unknown as { dictionary: { data: { S: string } } }).dictionary.data.S;
    element.add(this.doc.markStructureContent(type));
    draw();
    this.doc.endMarkedContent();
  }

  /** What is drawn is decoration, or stands elsewhere already: screen readers pass it by. */
  artifact(draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
    this.doc.markContent('Artifact', { type });
    draw();
    this.doc.endMarkedContent();
  }

  /** A place that links lead to, at this height of the sheet. */
  place(name: string, y: number): void {
    this.doc.addNamedDestination(name, 'XYZ', 0, y, null);
  }

  /** An element with these words, from `y` down. */
  element(tag: Tag, words: Words, y: number): void {
    this.open(tag);
    this.words(words, y);
    this.close();
  }

  /** Words in the innermost open element; with links where they lead somewhere. */
  words(words: Words, y: number): void {
    const { lines, x, face, size, to, plain } = words;
    for (const [index, line] of lines.entries()) {
      const top = y + index * lineHeight(size);
      // A screen reader must not run two lines into one word.
      const end = index < lines.length - 1 ? ' ' : '';
      const place = typeof to === 'object' ? to[index] : to;
      if (place !== undefined) {
        this.#link(words, line, x, top, place);
        continue;
      }
      let left = x;
      for (const { text, seq } of plain ? [{ text: line, seq: undefined }] : this.#cut(line)) {
        const place =
          seq !== undefined && this.#known.seqs.has(seq) ? places.entry(this.#known.part, seq) : undefined;
        if (place) this.#link(words, text, left, top, place);
        else this.content(() => this.print(words, text === line ? `${text}${end}` : text, left, top));
        if (text !== line) left += this.#widthWithEdges(text, face, size);
      }
    }
  }

  /** Letters only, with no structure. */
  print(
    { face, size, colour = 'black' }: Omit<Words, 'lines' | 'x'>,
    line: string,
    x: number,
    y: number,
  ): void {
    this.doc.font(face).fontSize(size).fillColor(colour);
    this.doc.text(line, x, y, UNMEASURED);
  }

  #cut(line: string): ReturnType<typeof atMentions> {
    return this.#known.seqs.size > 0 && line.includes('#') ? atMentions(line) : [{ text: line }];
  }

  #link({ face, size }: Words, text: string, x: number, y: number, place: string): void {
    const { doc } = this;
    const width = this.measure.width(text, face, size);
    const height = lineHeight(size);
    this.open({ type: 'Link' });
    this.content(() => {
      this.print({ face, size }, text, x, y);
      const under = y + height - 1.5;
      doc
        .undash()
        .lineWidth(0.4)
        .moveTo(x, under)
        .lineTo(x + width, under)
        .stroke('black');
    });
    doc.goTo(x, y, width, height, place, {
      structParent: this.#open.at(-1),
      Contents: textValue(goToText(text)),
    } as PDFKit.Mixins.AnnotationOption);
    this.close();
  }

  /** Like the width of a line, with the spaces at its edges. */
  #widthWithEdges(text: string, face: Face, size: number): number {
    const inner = text.trim();
    const spaces = (text.length - inner.length) * this.measure.width('\u00a0', face, size);
    return this.measure.width(inner, face, size) + spaces;
  }
}
