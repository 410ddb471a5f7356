/** Something that acceptance still needs, with figures that say how much there is. */
export interface Missing {
  readonly id:
    | 'settled-reading'
    | 'clear-path'
    | 'not-saturated'
    | 'in-band'
    | 'bracket-horizontal'
    | 'bracket-vertical'
    | 'at-peak'
    | 'second-peak'
    | 'highest-reading'
    | 'blocking-check'
    | 'steady-hold'
    | 'fresh-reading'
    | 'settled-doubt'
    | 'untouched'
    | 'care'
    | 'as-last-left';
  readonly figures: Readonly<Record<string, number>>;
}
