/** A dash, a dot or nothing at all in place of a name. */
const NO_LETTERS = /^[^\p{L}\p{N}]*$/u;

const NOBODY =
  /^(?:(?:i|we)(?: have|'ve)? )?(?:told )?(?:nobody|no body|no one|noone|none|nil|no|nothing|not (?:told|yet|applicable)|n ?a|unknown|x+)(?: (?:yet|at all|here|else|there|was told|has been told|to tell|knows))*$/u;

const DID_NOT = /\b(?:did not|didn't|have not|haven't|not) (?:tell|told) (?:anyone|anybody|any one)\b/u;

/** True for words that name nobody where it is asked who was told: "nobody", "no one yet", "n/a", "-". */
export function namesNobody(note: string): boolean {
  const words = note
    .toLowerCase()
    .replace(/[’`]/gu, "'")
    .replace(/[^\p{L}\p{N}']+/gu, ' ')
    .trim();
  return NO_LETTERS.test(note) || NOBODY.test(words) || DID_NOT.test(words);
}
