export interface Label {
  key: string;
  /** Pixels from the left of the plot. */
  x: number;
  text: string;
}

export interface PlacedLabel extends Label {
  /** Row above the plot, 0 nearest to it. */
  row: number;
  /** Where the text begins or ends, pixels from the left of the plot: at `x`, or left of it where no side has room. */
  textX: number;
  anchor: 'start' | 'end';
}

/** Average width of a character at the charts' label size, pixels; on the large side, so that labels never touch. */
const CHARACTER = 6.4;
const GAP = 8;

/** Puts labels into as few rows as possible without overlap, none beyond the right edge. */
export function placeLabels(labels: readonly Label[], width: number): PlacedLabel[] {
  const rows: [from: number, to: number][][] = [];
  return [...labels]
    .sort((a, b) => a.x - b.x)
    .map((label) => {
      const room = label.text.length * CHARACTER;
      const anchor = label.x + room > width && label.x - room > 0 ? 'end' : 'start';
      const textX = anchor === 'start' ? Math.max(0, Math.min(label.x, width - room)) : label.x;
      const [from, to] = anchor === 'start' ? [textX, textX + room] : [textX - room, textX];
      const free = rows.findIndex((row) =>
        row.every((taken) => to + GAP < taken[0] || from > taken[1] + GAP),
      );
      const row = free < 0 ? rows.length : free;
      rows[row] = [...(rows[row] ?? []), [from, to]];
      return { ...label, row, textX, anchor };
    });
}
