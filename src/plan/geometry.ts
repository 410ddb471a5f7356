/** Angles are degrees, lengths metres. */
const DEGREES = 180 / Math.PI;

/** A receiver this near to the beam's axis is near enough to begin, metres. Common practice, no source. */
export const PRE_AIM_M = 0.15;

/** The angle of a length across the beam, as seen from the other end. */
export const angleOf = (across: number, pathLength: number): number =>
  DEGREES * Math.atan(across / pathLength);

/** How far a turn by `degrees` moves the spot at the far end. */
export const offsetOf = (degrees: number, pathLength: number): number =>
  pathLength * Math.tan(degrees / DEGREES);

/** Width at the far end of a beam of that full angle. */
export const footprintOf = (beamAngle: number, pathLength: number): number =>
  2 * offsetOf(beamAngle / 2, pathLength);
