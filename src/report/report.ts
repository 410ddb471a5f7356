import type { Captioned } from '../charts/turns-scene.ts';
import type { Signature } from '../model/facts.ts';
import { pageNumberText } from '../phrases/headings.ts';

/**
 * A report in words and drawings, for both renderings: the printable page and the PDF differ in type and line
 * breaks, never in what they say. Built by `coverPage` and `pairPage`.
 */
export type Block =
  /** The answers, large. */
  | { readonly kind: 'figures'; readonly items: readonly Figure[] }
  | { readonly kind: 'facts'; readonly title: string; readonly rows: readonly Fact[] }
  | {
      readonly kind: 'table';
      readonly title: string;
      readonly columns: readonly Column[];
      /** Shown instead of the table if there are no rows. */
      readonly empty: string;
      readonly rows: readonly (readonly string[])[];
    }
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
  /** Two side by side, or one alone. */
  | { readonly kind: 'charts'; readonly charts: readonly Captioned[] };

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

export interface Item {
  /** What kind of item it is, in a word or two. */
  readonly lead: string;
  readonly text: string;
}

/** One sheet of A4. */
export interface Page {
  readonly title: string;
  readonly subtitle: string;
  /** The status, and whether somebody must look at it. */
  readonly badge: { readonly text: string; readonly heed: boolean };
  readonly blocks: readonly Block[];
  /** At the foot of the page, before its number: the record that it shows. */
  readonly foot: string;
}

/** "Page 3 of 13" */
export const pageNumber = (index: number, total: number): string => pageNumberText(index + 1, total);
