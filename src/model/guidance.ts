import { z } from 'zod';
import { Name } from './name.ts';

const metres = z.number().positive().max(100);

/**
 * The siting distances that a plan is checked against, metres. Guidance only: local code and the maker
 * decide. The user can change every figure; a missing one is not checked.
 */
export const Guidance = z.object({
  name: Name,
  /** Where the figures are from, as printed beside them. */
  source: z.string().max(200),
  /** How far the watched area may reach from the beam, to one side. */
  reach: metres.optional(),
  /** Farthest between neighbouring beams. */
  spacing: metres.optional(),
  /** Farthest and nearest from the beam to a wall or obstruction along it. */
  wallMost: metres.optional(),
  wallLeast: metres.optional(),
  /** How far below the ceiling the beam may run. */
  ceilingLeast: metres.optional(),
  ceilingMost: metres.optional(),
  /** The highest ceiling under which such a beam may watch alone. */
  highest: metres.optional(),
});
export type Guidance = z.infer<typeof Guidance>;

/** As `invertedIn` of a plan. */
export const invertedGuidance = (guidance: Guidance): readonly (readonly [string, string])[] =>
  (
    [
      ['wallLeast', 'wallMost'],
      ['ceilingLeast', 'ceilingMost'],
    ] as const
  ).filter(([low, high]) => (guidance[low] ?? 0) > (guidance[high] ?? Number.POSITIVE_INFINITY));

/** Starting points. Check them against the text of the standard before you rely on them. */
export const GUIDANCES: readonly Guidance[] = [
  {
    name: 'BS 5839-1 style',
    source: 'BS 5839-1, from memory',
    reach: 7.5,
    spacing: 15,
    wallMost: 7.5,
    wallLeast: 0.5,
    ceilingLeast: 0.025,
    ceilingMost: 0.6,
    highest: 25,
  },
  {
    name: 'NFPA 72 style',
    source: 'NFPA 72 annex, smooth ceiling, from memory',
    reach: 9.15,
    spacing: 18.3,
    wallMost: 9.15,
  },
  {
    // 30 ft and 60 ft exactly: the standard's own figures. Its metres beside them are rounded up.
    name: 'NFPA 72 style, in feet',
    source: 'NFPA 72 annex, smooth ceiling: 60 ft, from memory',
    reach: 9.144,
    spacing: 18.288,
    wallMost: 9.144,
  },
];
