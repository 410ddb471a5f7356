/** What a phone says of the part of the page that can be seen: `window.visualViewport` has it. */
export interface Seen {
  readonly height: number;
  readonly offsetTop: number;
  readonly scale: number;
}

/** How much of the foot of the page the keyboard of the phone covers, CSS pixels. A page that is pinched larger is not covered. */
export const coveredBelow = ({ height, offsetTop, scale }: Seen, pageHeight: number): number =>
  scale > 1 ? 0 : Math.max(0, Math.round(pageHeight - height - offsetTop));
