/** A column of a table that is to be set: its part of the width, and the width of its widest word in points. */
export interface ColumnNeed {
  readonly share: number;
  readonly widest: number;
}

/**
 * Widths of columns, points, that add up to `room`: by their shares, but none narrower than its widest word while there
 * is room for all of these.
 */
export function columnWidths(columns: readonly ColumnNeed[], room: number): number[] {
  const needed = columns.reduce((sum, { widest }) => sum + widest, 0);
  // What does not fit at all is narrowed alike; then words have to break.
  if (needed >= room) return columns.map(({ widest }) => (widest / needed) * room);
  const widths = new Array<number>(columns.length).fill(0);
  let open = columns.map((column, index) => ({ ...column, index }));
  let left = room;
  for (;;) {
    const shares = open.reduce((sum, { share }) => sum + share, 0);
    const tooNarrow = open.filter(({ share, widest }) => (share / shares) * left < widest);
    if (tooNarrow.length === 0) {
      for (const { index, share } of open) widths[index] = (share / shares) * left;
      return widths;
    }
    for (const { index, widest } of tooNarrow) {
      widths[index] = widest;
      left -= widest;
    }
    open = open.filter((column) => !tooNarrow.includes(column));
  }
}
