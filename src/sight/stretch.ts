/** With nothing telling for so long a phone has lost what it watches. Milliseconds. */
export const LOST_AFTER_MS = 3_000;
/** Two looks that lie further apart leave open what was shown between them. Milliseconds. */
export const LONGEST_GAP_MS = 1_500;

/** When a phone looked or listened (its clock, ms), and why that tells nothing; undefined: it does. */
interface Look {
  readonly at: number;
  readonly doubt?: string | undefined;
}

/** Those before one at this time that belong to it, over `keptMs` and a gap: none after a longer gap, or when the clock went back. */
export function lookedBefore<L extends Look>(looks: readonly L[], at: number, keptMs: number): readonly L[] {
  const last = looks.at(-1);
  if (last && (at <= last.at || at - last.at > LONGEST_GAP_MS)) return [];
  return looks.filter((look) => look.at >= at - keptMs - LONGEST_GAP_MS);
}

/** Whether nothing has told for so long that it is lost, and why. */
export function lostBy<D extends string>(
  looks: readonly (Look & { readonly doubt?: D | undefined })[],
): D | undefined {
  const newest = looks.at(-1);
  const since = (looks.findLast(({ doubt }) => doubt === undefined) ?? looks[0])?.at ?? 0;
  return newest && newest.at - since >= LOST_AFTER_MS ? newest.doubt : undefined;
}
