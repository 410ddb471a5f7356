import type { Axis } from '../model/turns.ts';

/** Positions of both screws, eighths from the start. */
export type Place = Record<Axis, number>;

/** The places of a widening square around the start, in order: one pitch on one adjuster at a time. */
export function widening(rings: number, pitch: number): Place[] {
  const places: Place[] = [{ horizontal: 0, vertical: 0 }];
  let [h, v] = [0, 0];
  const walk = (steps: number, dh: number, dv: number) => {
    for (let i = 0; i < steps; i++) {
      h += dh * pitch;
      v += dv * pitch;
      places.push({ horizontal: h, vertical: v });
    }
  };
  for (let side = 1; side <= 2 * rings; side += 2) {
    walk(side, 1, 0);
    walk(side, 0, 1);
    walk(side + 1, -1, 0);
    walk(side + 1, 0, -1);
  }
  walk(2 * rings, 1, 0);
  return places;
}
