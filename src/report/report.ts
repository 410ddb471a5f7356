import type { Captioned } from '../charts/turns-scene.ts';
import type { Signature } from '../model/facts.ts';
import type { JobId, Seq } from '../model/ids.ts';
import { pageNumberText } from '../phrases/headings.ts';

/**
 * A report in words and drawings, for both renderings: the printable page and the PDF differ in type and line
 * breaks, never in what they say. Built by `coverPage` and `pairPage`.
 */
export type Block =
  /** The answers, large. */
  | { readonly kind: 'figures'; readonly items: readonly Figure[] }
  | { readonly kind: 'facts'; readonly title: string; readonly rows: readonly Fact[] }
  | TableBlock
  | {
      readonly kind: 'list';
      readonly title: string;
      readonly empty: string;
      readonly items: readonly Item[];
    }
  | {
      readonly kind: 'signature';
      readonly title: string;
      readonly lines: readonly string[];
      readonly signature: Signature | undefined;
    }
  /** `gone`: what is said of photos that have no picture here. */
  | {
      readonly kind: 'photos';
      readonly title: string;
      readonly photos: readonly ReportPhoto[];
      readonly gone: readonly string[];
    }
  /** Two side by side, or one alone. */
  | { readonly kind: 'charts'; readonly charts: readonly Captioned[] }
  /** The entries that the blocks before it name as "#12", in words; each "#12" leads here. */
  | {
      readonly kind: 'entries';
      readonly title: string;
      readonly columns: readonly Column[];
      readonly rows: readonly EntryRow[];
    };

export interface TableBlock {
  readonly kind: 'table';
  readonly title: string;
  readonly columns: readonly Column[];
  /** Shown instead of the table if there are no rows. */
  readonly empty: string;
  readonly rows: readonly (readonly Cell[])[];
}

/** A photo of a visit. Its picture lies beside the log `job`: each rendering gets it there. */
export interface ReportPhoto {
  readonly job: JobId;
  /** Its entry. */
  readonly photo: Seq;
  readonly bytes: number;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Under it. */
  readonly caption: string;
  /** For who cannot see it. */
  readonly alt: string;
}

export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly note: string;
}

export interface Fact {
  readonly name: string;
  readonly value: string;
}

export interface Column {
  readonly name: string;
  /** Its part of the width, relative to the other columns. */
  readonly share: number;
}

/** Words; words that lead to another part; or the number of the page on which another part begins. */
export type Cell = string | { readonly text: string; readonly part: string } | { readonly pageOf: string };

export interface Item {
  /** What kind of item it is, in a word or two. */
  readonly lead: string;
  readonly text: string;
}

export interface EntryRow {
  readonly seq: Seq;
  readonly time: string;
  readonly who: string;
  readonly text: string;
  /** Titles of the blocks that name it. */
  readonly namedIn: readonly string[];
}

/** The cover, or a pair. It begins on a sheet of its own and takes as many as it needs. */
export interface Part {
  /** Its name inside the report. */
  readonly id: string;
  readonly title: string;
  readonly subtitle: string;
  /** The status, and whether somebody must look at it. */
  readonly badge: { readonly text: string; readonly heed: boolean };
  readonly blocks: readonly Block[];
  /** At the foot of each of its sheets: the record that it shows. */
  readonly foot: string;
}

/** The `id` of the cover: no pair has it. */
export const COVER = '';

/** The words of a cell; '' for a page number, which each rendering works out. */
export const cellText = (cell: Cell): string =>
  typeof cell === 'string' ? cell : 'text' in cell ? cell.text : '';

/** Its name on paper, where it has one. */
export const titleOf = (block: Block): string | undefined => ('title' in block ? block.title : undefined);

/** "Page 3 of 13" */
export const pageNumber = (index: number, total: number): string => pageNumberText(index + 1, total);
