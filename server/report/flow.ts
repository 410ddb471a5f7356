import type { Pen } from './pen.ts';

/** A strip of a part that stays whole: a row of a table, a heading, a chart. */
export interface Piece {
  /** Points. */
  readonly height: number;
  /** On the same sheet as the piece that follows. */
  readonly withNext?: boolean;
  /** Printed once more above this piece where it begins a further sheet: the head of its table. */
  readonly again?: Piece;
  draw(pen: Pen, y: number): void;
}

export interface Placed {
  readonly piece: Piece;
  /** Its top on the sheet, points. */
  readonly y: number;
}

/** Where pieces may stand on a sheet, points from its top. */
export interface Room {
  /** On the first sheet, and on the others. */
  readonly first: number;
  readonly top: number;
  readonly bottom: number;
}

/** Pieces on as few sheets as they need, in order. None may be higher than a sheet. */
export function flow(pieces: readonly Piece[], { first, top, bottom }: Room): Placed[][] {
  const sheets: Placed[][] = [[]];
  let y = first;
  let empty = true;
  for (const group of groupsOf(pieces)) {
    const height = group.reduce((sum, piece) => sum + piece.height, 0);
    const apart = height > bottom - top;
    for (const [index, piece] of group.entries()) {
      const needed = index === 0 && !apart ? height : piece.height;
      if (!empty && y + needed > bottom) {
        sheets.push([]);
        y = top;
        empty = true;
      }
      const begins = sheets.length > 1 && empty;
      for (const each of begins && piece.again ? [piece.again, piece] : [piece]) {
        sheets.at(-1)?.push({ piece: each, y });
        y += each.height;
        empty = false;
      }
    }
  }
  return sheets;
}

/** Pieces that stay together. */
function* groupsOf(pieces: readonly Piece[]): Generator<readonly Piece[]> {
  let group: Piece[] = [];
  for (const piece of pieces) {
    group.push(piece);
    if (piece.withNext) continue;
    yield group;
    group = [];
  }
  if (group.length > 0) yield group;
}
