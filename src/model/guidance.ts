import * as z from 'zod/mini';
import { Name } from './name.ts';

const metres = z.number().check(z.positive(), z.maximum(100));

/**
 * The siting distances that a plan is checked against, metres. Guidance only: local code and the maker
 * decide. The user can change every figure; a missing one is not checked.
 */
export const Guidance = z.object({
  name: Name,
  /** Where the figures are from, as printed beside them. */
  source: z.string().check(z.maxLength(200)),
  /** How far the watched area may reach from the beam, to one side. */
  reach: z.optional(metres),
  /** Farthest between neighbouring beams. */
  spacing: z.optional(metres),
  /** Farthest and nearest from the beam to a wall or obstruction along it. */
  wallMost: z.optional(metres),
  wallLeast: z.optional(metres),
  /** How far below the ceiling the beam may run. */
  ceilingLeast: z.optional(metres),
  ceilingMost: z.optional(metres),
  /** The highest ceiling under which such a beam may watch alone. */
  highest: z.optional(metres),
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
